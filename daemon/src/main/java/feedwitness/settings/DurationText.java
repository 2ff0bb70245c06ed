package feedwitness.settings;

import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Durations as people write them: {@code 300ms}, {@code 2s}, {@code 5min}, {@code 1h}. */
public final class DurationText {
  private static final Pattern SHAPE =
      Pattern.compile("([0-9]{1,9}(?:\\.[0-9]{1,6})?) ?(ms|s|min|h|d)");

  private DurationText() {}

  /**
   * Reads a number and one of ms, s, min, h, d; at most 10 years, to the millisecond.
   *
   * @throws IllegalArgumentException if it is no such text, saying why
   */
  public static Duration parse(String text) {
    Values.refuseDecimalComma(text);
    Matcher shape = SHAPE.matcher(text.strip());
    if (!shape.matches()) {
      throw new IllegalArgumentException(
          "'%s' is no duration such as 300ms, 2s, 5min or 1h".formatted(text));
    }
    double millis = Double.parseDouble(shape.group(1)) * millisIn(shape.group(2));
    if (millis > Duration.ofDays(3650).toMillis()) {
      throw new IllegalArgumentException("'%s' is longer than 3650d".formatted(text));
    }
    if (millis != Math.rint(millis)) {
      throw new IllegalArgumentException("'%s' is finer than a millisecond, 1ms".formatted(text));
    }
    return Duration.ofMillis((long) millis);
  }

  /** Writes a duration in the largest unit that leaves a whole number. */
  public static String of(Duration duration) {
    long millis = duration.toMillis();
    for (String unit : new String[] {"d", "h", "min", "s"}) {
      if (millis != 0 && millis % millisIn(unit) == 0) {
        return millis / millisIn(unit) + unit;
      }
    }
    return millis + "ms";
  }

  private static long millisIn(String unit) {
    return switch (unit) {
      case "ms" -> 1;
      case "s" -> 1_000;
      case "min" -> 60_000;
      case "h" -> 3_600_000;
      default -> 86_400_000;
    };
  }
}
