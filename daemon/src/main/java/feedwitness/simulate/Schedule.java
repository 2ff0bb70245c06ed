package feedwitness.simulate;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalTime;
import java.util.List;

/**
 * A nursery file: what happens when, and the plant's numbers where they differ from the usual.
 *
 * <pre>
 * # the rest of a line is a comment
 * set source-strength 0.46
 * TUE 10:00 +4h injector-sag 12%     every Tuesday, developing over four hours
 * SAT 14:05 +3m bus unplug           every Saturday, for three minutes
 * T+90s line in-air +2m              once, 90 s after the start
 * </pre>
 *
 * <p>Times of day are local to the nursery. A duration is a number with s, m, h or d.
 */
public final class Schedule {
  private static final String WEEK = "week.schedule";

  /** When a deed begins. */
  sealed interface When {
    /** Every week, local time. */
    record Weekly(DayOfWeek day, LocalTime time) implements When {}

    /** Once, so long after the start. */
    record Once(Duration afterStart) implements When {}
  }

  record Entry(When when, Deed deed) {}

  private final Parameters parameters;
  private final List<Entry> entries;

  Schedule(Parameters parameters, List<Entry> entries) {
    this.parameters = parameters;
    this.entries = List.copyOf(entries);
  }

  Parameters parameters() {
    return parameters;
  }

  List<Entry> entries() {
    return entries;
  }

  /** A nursery where nothing goes wrong. */
  public static Schedule quiet() {
    return new Schedule(Parameters.DEFAULTS, List.of());
  }

  /** The week worth showing. */
  public static Schedule week() {
    try (InputStream in = Schedule.class.getResourceAsStream(WEEK)) {
      if (in == null) {
        throw new IllegalStateException(WEEK + " is missing from the program; build it again");
      }
      return parse(WEEK, new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Reads a file.
   *
   * @throws ScheduleException naming every faulty line and its remedy
   * @throws IOException if the file cannot be read
   */
  public static Schedule read(Path file) throws IOException {
    return parse(file.toString(), Files.readString(file));
  }

  /**
   * Reads a text.
   *
   * @param name stands before the line number in messages
   * @throws ScheduleException naming every faulty line and its remedy
   */
  public static Schedule parse(String name, String text) {
    return new ScheduleReader(name).read(text);
  }
}
