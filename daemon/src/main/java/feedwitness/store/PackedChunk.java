package feedwitness.store;

import feedwitness.measurement.Measurement;
import feedwitness.quantity.Octets;
import feedwitness.quantity.Stamp;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * A chunk and its roll-ups, packed and ready to be written: all that needs no database, so that
 * several can be packed at once.
 *
 * @param bases numbers of the bases that made its numbers, by comma
 * @param firstMillis earliest time of a sample as the clock had it; {@code lastMillis} the latest
 * @param imported whether all of it was brought in from files
 */
record PackedChunk(
    ChunkFacts facts,
    Octets samples,
    String bases,
    long firstMillis,
    long lastMillis,
    boolean imported,
    Packed rollups) {
  /** H2 keeps at most 1 048 576 octets in a VARBINARY. */
  static final int MAX_PACKED = 900_000;

  /** The roll-ups of a chunk. */
  record Packed(Rollup hour, Octets whole, Octets quarters, Octets minutes) {
    static Packed of(ChunkFacts facts, List<Rollup> minutes) {
      Stretches quarters = new Stretches(Level.QUARTER.millis());
      Stretch whole = new Stretch();
      for (Rollup minute : minutes) {
        quarters.add(minute);
        whole.add(minute);
      }
      Rollup hour = whole.rollup(facts.key().hour() * ChunkKey.HOUR_MILLIS);
      return new Packed(
          hour,
          Octets.of(RollupCodec.pack(List.of(hour))),
          Octets.of(RollupCodec.pack(quarters.rollups())),
          Octets.of(RollupCodec.packMinutes(facts, minutes)));
    }
  }

  /**
   * One, or several where one would be too large.
   *
   * @param measurements of the samples of the run, in the same order
   */
  static List<PackedChunk> of(Run run, List<Measurement> measurements) {
    ByteSink sink = new ByteSink();
    RunCodec.write(sink, run);
    byte[] packed = Envelope.pack(Envelope.Kind.RUN, sink.toArray());
    int count = run.samples().size();
    if (packed.length <= MAX_PACKED || count == 1) {
      return List.of(of(run, measurements, packed));
    }
    int half = count / 2;
    List<PackedChunk> parts = new ArrayList<>();
    parts.addAll(
        of(new Run(run.key(), run.samples().subList(0, half)), measurements.subList(0, half)));
    parts.addAll(
        of(
            new Run(run.key(), run.samples().subList(half, count)),
            measurements.subList(half, count)));
    return parts;
  }

  private static PackedChunk of(Run run, List<Measurement> measurements, byte[] packed) {
    ChunkFacts facts = ChunkFacts.of(run);
    Stretches minutes = new Stretches(Level.MINUTE.millis());
    measurements.forEach(minutes::add);
    TreeSet<Integer> bases = new TreeSet<>();
    int before = -1;
    long first = Long.MAX_VALUE;
    long last = Long.MIN_VALUE;
    for (Kept kept : run.samples()) {
      if (kept.basis() != before) {
        before = kept.basis();
        bases.add(before);
      }
      Stamp stamp = kept.sample().stamp();
      first = Math.min(first, stamp.wallMillis());
      last = Math.max(last, stamp.wallMillis());
    }
    return new PackedChunk(
        facts,
        Octets.of(packed),
        String.join(",", bases.stream().map(String::valueOf).toList()),
        first,
        last,
        Imports.all(run.samples()),
        Packed.of(facts, minutes.rollups()));
  }
}
