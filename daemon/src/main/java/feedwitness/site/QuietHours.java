package feedwitness.site;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.zone.ZoneOffsetTransition;

/**
 * A daily stretch by the clock on the wall in which only urgent messages are sent. May run across
 * midnight. On the days on which clocks change it is as long as the wall clock makes it.
 *
 * @param from first quiet time of day
 * @param to first time of day that is quiet no longer; not the same as {@code from}
 * @param letsThrough what is sent all the same
 */
public record QuietHours(LocalTime from, LocalTime to, Urgency letsThrough) {
  /** Two overlaps of a day do not happen; one more step than needed. */
  private static final int MOST_STEPS = 3;

  public QuietHours {
    if (from.equals(to)) {
      throw new IllegalArgumentException(
          "quiet hours from %s to %s are either none or a whole day; give two different times"
              .formatted(from, to));
    }
  }

  /** Whether a message has to wait at that time. */
  public boolean holds(Urgency urgency, Instant now, ZoneId zone) {
    return !urgency.reaches(letsThrough) && quiet(LocalTime.ofInstant(now, zone));
  }

  /** Whether a time of day is quiet. */
  public boolean quiet(LocalTime time) {
    return from.isBefore(to)
        ? !time.isBefore(from) && time.isBefore(to)
        : !time.isBefore(from) || time.isBefore(to);
  }

  /** The first moment at or after {@code now} that is not quiet. */
  public Instant end(Instant now, ZoneId zone) {
    Instant end = now;
    for (int step = 0; step < MOST_STEPS && quiet(LocalTime.ofInstant(end, zone)); step++) {
      end = nextOff(end, zone);
    }
    return end;
  }

  private Instant nextOff(Instant quiet, ZoneId zone) {
    LocalDateTime local = LocalDateTime.ofInstant(quiet, zone);
    LocalDateTime off = local.toLocalDate().atTime(to);
    if (!off.isAfter(local)) {
      off = off.plusDays(1);
    }
    // Clocks put forward over the end of the quiet hours end them; put back, they may begin anew.
    ZoneOffsetTransition change = zone.getRules().nextTransition(quiet);
    // In the hour that comes twice, the one in which it is asked.
    Instant end = ZonedDateTime.ofLocal(off, zone, zone.getRules().getOffset(quiet)).toInstant();
    if (change != null && change.getInstant().isBefore(end)) {
      LocalTime after = change.getDateTimeAfter().toLocalTime();
      if (!quiet(after)) {
        return change.getInstant();
      }
    }
    return end;
  }
}
