package feedwitness.store;

/**
 * The days, in UTC, that lie wholly in a range of time, as keys of one point.
 *
 * @param firstKey of the first day
 * @param lastKey of the last day; below {@code firstKey} if there is none
 */
record WholeDays(long firstKey, long lastKey) {

  /** Of {@code from} ≤ time < {@code to}, ms. */
  static WholeDays within(int point, long from, long to) {
    long first = floorToDay(ChunkKey.hourOf(from) + ChunkKey.HOURS_A_DAY - 1);
    // clamped, an hour at either end may hold any time
    long end = floorToDay(ChunkKey.hourOf(to));
    while (first < end && !ChunkKey.within(first, from, to)) {
      first += ChunkKey.HOURS_A_DAY;
    }
    if (first >= end) {
      return new WholeDays(0, -1);
    }
    return new WholeDays(
        ChunkKey.of(point, first, 0), ChunkKey.of(point, end - 1, ChunkKey.MAX_ORDINAL));
  }

  boolean isEmpty() {
    return lastKey < firstKey;
  }

  private static long floorToDay(long hour) {
    return Math.floorDiv(hour, ChunkKey.HOURS_A_DAY) * ChunkKey.HOURS_A_DAY;
  }
}
