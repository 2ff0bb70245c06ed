package feedwitness.app;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.Optional;

/** A time as people type it. */
final class MomentText {
  static final String EXAMPLES =
      "now, 14:05, 14:05:30, 2026-06-02T14:05, '2026-06-02 14:05:30' or 2026-06-02T13:05:00Z";

  private MomentText() {}

  /** Times without a zone are in {@code zone}; times without a date are of today there. */
  static Optional<Instant> read(String text, Instant now, ZoneId zone) {
    String plain = text.strip().replace(' ', 'T');
    if (plain.equalsIgnoreCase("now")) {
      return Optional.of(now);
    }
    try {
      if (plain.matches("\\d{2}:\\d{2}(:\\d{2}(\\.\\d{1,9})?)?")) {
        LocalDate today = now.atZone(zone).toLocalDate();
        return Optional.of(today.atTime(LocalTime.parse(plain)).atZone(zone).toInstant());
      }
      return Optional.of(
          plain.matches(".*(Z|[+-]\\d{2}:\\d{2})")
              ? OffsetDateTime.parse(plain).toInstant()
              : LocalDateTime.parse(plain).atZone(zone).toInstant());
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }
}
