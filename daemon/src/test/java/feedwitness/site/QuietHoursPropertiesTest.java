package feedwitness.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** Against a clock on the wall that is looked at every minute. */
class QuietHoursPropertiesTest {
  private static final int MINUTES = 2 * 24 * 60;

  /** Whole hours and half an hour, north, south and none. */
  @Provide
  Arbitrary<String> zones() {
    return Arbitraries.of("Europe/London", "Australia/Lord_Howe", "America/St_Johns", "UTC");
  }

  /** Days on which those clocks change, and one on which none does. */
  @Provide
  Arbitrary<String> days() {
    return Arbitraries.of(
        "2026-03-28",
        "2026-10-24",
        "2026-04-04",
        "2026-10-03",
        "2026-03-07",
        "2026-10-31",
        "2026-06-01");
  }

  @Property(tries = 400)
  void theyEndWhenTheWallClockSaysSo(
      @ForAll("zones") String zone,
      @ForAll("days") String day,
      @ForAll @IntRange(min = 0, max = 1439) int from,
      @ForAll @IntRange(min = 0, max = 1439) int to,
      @ForAll @IntRange(min = 0, max = 1439) int start) {
    Assume.that(from != to);
    QuietHours quiet =
        new QuietHours(
            LocalTime.ofSecondOfDay(from * 60L), LocalTime.ofSecondOfDay(to * 60L), Urgency.HIGH);
    ZoneId place = ZoneId.of(zone);
    Instant now = Instant.parse(day + "T12:00:00Z").plusSeconds(start * 60L);
    Instant end = now;
    for (int i = 0; i < MINUTES && quiet.quiet(LocalTime.ofInstant(end, place)); i++) {
      end = end.plusSeconds(60);
    }
    assertEquals(end, quiet.end(now, place));
    assertFalse(quiet.holds(Urgency.LOW, quiet.end(now, place), place));
    assertFalse(quiet.holds(Urgency.HIGH, now, place));
  }

  @Example
  void theHourThatComesTwiceEndsThemTwice() {
    QuietHours quiet = new QuietHours(LocalTime.of(22, 0), LocalTime.of(1, 29), Urgency.HIGH);
    ZoneId london = ZoneId.of("Europe/London");
    assertEquals(
        Instant.parse("2026-10-25T00:29:00Z"),
        quiet.end(Instant.parse("2026-10-25T00:03:00Z"), london));
    assertEquals(
        Instant.parse("2026-10-25T01:29:00Z"),
        quiet.end(Instant.parse("2026-10-25T01:03:00Z"), london));
  }
}
