package feedwitness.app.table;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Turns the times of a table into instants, one after another. In the hour that a clock set back in
 * autumn shows twice, it is the second time as soon as the first would lie before the row above.
 */
public final class TimeReader {
  private final DateOrder order;
  private final ZoneId zone;
  private @Nullable Instant previous;

  public TimeReader(DateOrder order, ZoneId zone) {
    this.order = order;
    this.zone = zone;
  }

  /** A time, or why it is none. {@code why} is empty if there is an instant. */
  public record Read(Optional<Instant> time, String why) {
    static Read not(String why) {
      return new Read(Optional.empty(), why);
    }
  }

  /** Reads the next time of the table. */
  public Read read(String field) {
    Optional<TimeText> parsed = TimeText.parse(field);
    if (parsed.isEmpty()) {
      return Read.not("no time");
    }
    try {
      Read read = resolve(parsed.get());
      read.time().ifPresent(time -> previous = time);
      return read;
    } catch (DateTimeException e) {
      return Read.not("no such date");
    }
  }

  private Read resolve(TimeText text) {
    if (text.epochMillis().isPresent()) {
      return new Read(Optional.of(Instant.ofEpochMilli(text.epochMillis().get())), "");
    }
    LocalDateTime local = LocalDateTime.of(date(text), LocalTime.ofNanoOfDay(text.nanoOfDay()));
    if (!text.offset().isEmpty()) {
      return new Read(Optional.of(local.toInstant(ZoneOffset.of(text.offset()))), "");
    }
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    if (offsets.isEmpty()) {
      return Read.not("a time that daylight saving leaves out");
    }
    Instant time = local.toInstant(offsets.get(0));
    if (offsets.size() > 1 && previous != null && time.isBefore(previous)) {
      time = local.toInstant(offsets.get(1));
    }
    return new Read(Optional.of(time), "");
  }

  private LocalDate date(TimeText text) {
    if (text.yearFirst()) {
      return LocalDate.of(text.first(), text.second(), text.third());
    }
    int year = text.third() < 100 ? 2000 + text.third() : text.third();
    return order == DateOrder.DAY_FIRST
        ? LocalDate.of(year, text.second(), text.first())
        : LocalDate.of(year, text.first(), text.second());
  }
}
