package feedwitness.settings;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Room on a disk as people write it: {@code 200MB}, {@code 1.5GB}; 1 MB is a million octets. */
final class SizeText {
  private static final Pattern SHAPE = Pattern.compile("([0-9]{1,6}(?:\\.[0-9]{1,3})?) ?(MB|GB)");

  static final long MEGA = 1_000_000;
  private static final long GIGA = 1_000 * MEGA;

  private SizeText() {}

  /**
   * Octets.
   *
   * @throws IllegalArgumentException if it is no such text, saying why
   */
  static long parse(String text) {
    Values.refuseDecimalComma(text);
    Matcher shape = SHAPE.matcher(text.strip());
    if (!shape.matches()) {
      throw new IllegalArgumentException("'%s' is no size such as 200MB or 1.5GB".formatted(text));
    }
    return Math.round(
        Double.parseDouble(shape.group(1)) * (shape.group(2).equals("GB") ? GIGA : MEGA));
  }

  /** In whole MB. */
  static String of(long octets) {
    return octets / MEGA + "MB";
  }
}
