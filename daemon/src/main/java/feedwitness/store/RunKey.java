package feedwitness.store;

import feedwitness.quantity.Stamp;

/**
 * What the samples of one chunk have in common.
 *
 * @param point number of the point in the file
 * @param boot in which they were taken
 * @param dated whether the wall clock was trusted; never mixed, so that undated chunks can be dated
 *     later as a whole
 * @param hour of their wall time, whole hours since 1970 UTC, see {@link ChunkKey#hourOf}
 */
record RunKey(int point, int boot, boolean dated, long hour) {
  static RunKey of(int point, Stamp stamp) {
    return new RunKey(point, stamp.boot(), stamp.dated(), ChunkKey.hourOf(stamp.wallMillis()));
  }

  void write(ByteSink sink) {
    sink.unsigned(point);
    sink.unsigned(boot);
    sink.octet(dated ? 1 : 0);
    sink.signed(hour);
  }

  static RunKey read(ByteSource source) throws DamagedException {
    return new RunKey(
        source.count(ChunkKey.MAX_POINT),
        source.count(Integer.MAX_VALUE),
        source.octet() == 1,
        source.signed());
  }

  /** Whether a sample of the same point belongs here. */
  boolean fits(Stamp stamp) {
    return stamp.boot() == boot
        && stamp.dated() == dated
        && ChunkKey.hourOf(stamp.wallMillis()) == hour;
  }
}
