package feedwitness.app;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;

/** Times as people give them on the command line. */
final class TimeOption {
  private TimeOption() {}

  /**
   * Reads {@code 2026-06-01}, {@code 2026-06-01T08:00} or {@code 2026-06-01 08:00:30}, in the zone,
   * or one of these times with Z or an offset.
   *
   * @throws IllegalArgumentException if it is none of these
   */
  static Instant parse(String option, String text, ZoneId zone) {
    String plain = text.strip().replace(' ', 'T');
    try {
      if (!plain.contains("T")) {
        return LocalDate.parse(plain).atStartOfDay(zone).toInstant();
      }
      if (plain.matches(".*(Z|[+-]\\d\\d:?\\d\\d)$")) {
        return OffsetDateTime.parse(plain).toInstant();
      }
      return LocalDateTime.parse(plain).atZone(zone).toInstant();
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(
          "%s '%s' is no time such as 2026-06-01 or 2026-06-01T08:00".formatted(option, text), e);
    }
  }
}
