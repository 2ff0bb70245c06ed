package feedwitness.store;

/** Chooses how wide the buckets of a course are: round widths that people read off an axis. */
final class Widths {
  private static final long SECOND = 1_000;
  private static final long MINUTE = 60 * SECOND;
  private static final long HOUR = 60 * MINUTE;
  static final long DAY = 24 * HOUR;

  private static final long[] ROUND = {
    1,
    2,
    5,
    10,
    20,
    50,
    100,
    200,
    500,
    SECOND,
    2 * SECOND,
    5 * SECOND,
    10 * SECOND,
    15 * SECOND,
    30 * SECOND,
    MINUTE,
    2 * MINUTE,
    3 * MINUTE,
    5 * MINUTE,
    10 * MINUTE,
    15 * MINUTE,
    30 * MINUTE,
    HOUR,
    2 * HOUR,
    3 * HOUR,
    4 * HOUR,
    6 * HOUR,
    8 * HOUR,
    12 * HOUR,
    DAY
  };

  private Widths() {}

  /**
   * Narrowest round width at which {@code from} ≤ time < {@code to} touches at most {@code
   * maxBuckets} buckets aligned to 1970 UTC; whole days where a day is too narrow. All in ms.
   */
  static long narrowest(long from, long to, int maxBuckets) {
    for (long width : ROUND) {
      if (touched(from, to, width) <= maxBuckets) {
        return width;
      }
    }
    // buckets aligned to 1970 cannot hold both sides of it in one: the widest is as good as any
    // then
    long widest = Math.max(Math.abs(from), Math.abs(to)) / DAY + 2;
    long days = 2;
    while (days < widest && touched(from, to, days * DAY) > maxBuckets) {
      days++;
    }
    return days * DAY;
  }

  private static long touched(long from, long to, long width) {
    return Math.floorDiv(to - 1, width) - Math.floorDiv(from, width) + 1;
  }
}
