package feedwitness.store;

/**
 * The key of a chunk as one number, so that H2 keeps the chunks of a point together and in the
 * order of time: point (19 bits), hour (24 bits), and an ordinal (20 bits) that counts the chunks
 * of that hour in (boot, sequence) order.
 */
final class ChunkKey {
  static final long HOUR_MILLIS = 3_600_000;
  static final long HOURS_A_DAY = 24;
  static final int MAX_POINT = (1 << 19) - 1;
  static final int MAX_ORDINAL = (1 << 20) - 1;

  /** Hours are kept from 1970 − 957 years to 1970 + 957 years; a clock beyond that is clamped. */
  static final long MAX_HOUR = (1 << 23) - 1;

  static final long MIN_HOUR = -(1 << 23);

  private ChunkKey() {}

  static long of(int point, long hour, int ordinal) {
    if (point < 0 || point > MAX_POINT || ordinal < 0 || ordinal > MAX_ORDINAL) {
      throw new IllegalArgumentException(
          "point %d or ordinal %d does not fit into a chunk key".formatted(point, ordinal));
    }
    return ((long) point << 44) | ((clamp(hour) - MIN_HOUR) << 20) | ordinal;
  }

  static long hourOf(long wallMillis) {
    return clamp(Math.floorDiv(wallMillis, HOUR_MILLIS));
  }

  /** Hour of a key. */
  static long hour(long key) {
    return ((key >> 20) & 0xffffff) + MIN_HOUR;
  }

  static int ordinal(long key) {
    return (int) (key & MAX_ORDINAL);
  }

  /** First key of the day, in UTC, in which the hour of a key lies; names the day of the point. */
  static long dayOf(long key) {
    long firstHour = Math.floorDiv(hour(key), HOURS_A_DAY) * HOURS_A_DAY;
    return of((int) (key >> 44), firstHour, 0);
  }

  /** Last key that may be in a day. */
  static long endOfDay(long day) {
    long firstHour = Math.floorDiv(hour(day), HOURS_A_DAY) * HOURS_A_DAY;
    return of((int) (day >> 44), firstHour + HOURS_A_DAY - 1, MAX_ORDINAL);
  }

  /** Whether all samples of an hour certainly lie in {@code from} ≤ time < {@code to}, ms. */
  static boolean within(long hour, long from, long to) {
    return hour > MIN_HOUR
        && hour < MAX_HOUR
        && hour * HOUR_MILLIS >= from
        && (hour + 1) * HOUR_MILLIS <= to;
  }

  private static long clamp(long hour) {
    return Math.max(MIN_HOUR, Math.min(MAX_HOUR, hour));
  }
}
