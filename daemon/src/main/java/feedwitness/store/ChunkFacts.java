package feedwitness.store;

import feedwitness.quantity.Stamp;

/**
 * What the directory of chunks knows of one, besides its roll-ups.
 *
 * @param firstMono monotonic time of the first sample, ms; {@code lastMono} likewise
 * @param firstWall time of the first sample as the clock had it, ms
 */
record ChunkFacts(
    RunKey key,
    long firstSequence,
    long lastSequence,
    int samples,
    long firstMono,
    long lastMono,
    long firstWall) {
  static ChunkFacts of(Run run) {
    Stamp first = run.samples().get(0).sample().stamp();
    Stamp last = run.samples().get(run.samples().size() - 1).sample().stamp();
    return new ChunkFacts(
        run.key(),
        first.sequence(),
        last.sequence(),
        run.samples().size(),
        Dating.monotonicMillis(first),
        Dating.monotonicMillis(last),
        first.wallMillis());
  }

  void write(ByteSink sink) {
    key.write(sink);
    sink.signed(firstSequence);
    sink.signed(lastSequence);
    sink.unsigned(samples);
    sink.signed(firstMono);
    sink.signed(lastMono);
    sink.signed(firstWall);
  }

  static ChunkFacts read(ByteSource source) throws DamagedException {
    return new ChunkFacts(
        RunKey.read(source),
        source.signed(),
        source.signed(),
        source.count(Integer.MAX_VALUE),
        source.signed(),
        source.signed(),
        source.signed());
  }
}
