package feedwitness.simulate;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;

/**
 * A second by the nursery's own clock on the wall.
 *
 * @param second since 1970, UTC
 * @param secondOfDay 0 to 86 399, local
 * @param dayNumber local days since 1970
 * @param dayOfYear 1 to 366
 */
record Moment(long second, int secondOfDay, long dayNumber, DayOfWeek dayOfWeek, int dayOfYear) {
  static final int DAY = 86_400;

  static Moment at(long second, ZoneId zone) {
    long local =
        second + zone.getRules().getOffset(Instant.ofEpochSecond(second)).getTotalSeconds();
    long day = Math.floorDiv(local, DAY);
    LocalDate date = LocalDate.ofEpochDay(day);
    return new Moment(
        second, Math.floorMod(local, DAY), day, date.getDayOfWeek(), date.getDayOfYear());
  }

  /** Whether this is exactly that time of day. */
  boolean is(int hour, int minute) {
    return secondOfDay == hour * 3600 + minute * 60;
  }

  /** −1 in mid-January, +1 in mid-July. */
  double season() {
    return StrictMath.cos(2 * Math.PI * (dayOfYear - 196) / 365.25);
  }
}
