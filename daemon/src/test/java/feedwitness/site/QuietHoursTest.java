package feedwitness.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

class QuietHoursTest {
  private static final ZoneId LONDON = ZoneId.of("Europe/London");

  private static QuietHours hours(String from, String to) {
    return new QuietHours(LocalTime.parse(from), LocalTime.parse(to), Urgency.HIGH);
  }

  @Test
  void aNightRunsAcrossMidnight() {
    QuietHours night = hours("21:00", "06:00");
    assertTrue(night.quiet(LocalTime.of(21, 0)));
    assertTrue(night.quiet(LocalTime.MIDNIGHT));
    assertFalse(night.quiet(LocalTime.of(6, 0)));
    assertFalse(night.quiet(LocalTime.NOON));
    assertEquals(
        Instant.parse("2026-06-02T05:00:00Z"),
        night.end(Instant.parse("2026-06-01T22:30:00Z"), LONDON));
  }

  @Test
  void theNightInWhichClocksGoForwardIsAnHourShorter() {
    assertEquals(
        Instant.parse("2026-03-29T05:00:00Z"),
        hours("21:00", "06:00").end(Instant.parse("2026-03-28T21:00:00Z"), LONDON));
    // 01:30 does not exist that night: at 02:00, the moment after 00:59, quiet has ended.
    assertEquals(
        Instant.parse("2026-03-29T01:00:00Z"),
        hours("21:00", "01:30").end(Instant.parse("2026-03-28T21:00:00Z"), LONDON));
  }

  @Test
  void aDayIsNotQuietAsAWhole() {
    assertThrows(IllegalArgumentException.class, () -> hours("06:00", "06:00"));
  }
}
