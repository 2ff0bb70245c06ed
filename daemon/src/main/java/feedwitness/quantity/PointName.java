package feedwitness.quantity;

import java.util.regex.Pattern;

/**
 * Name of a measuring point, used in the configuration, in addresses and in the store: 1 to 32
 * characters, a lower-case letter first, then letters, digits, {@code -} and {@code _}.
 */
public record PointName(String text) implements Comparable<PointName> {
  private static final Pattern SHAPE = Pattern.compile("[a-z][a-z0-9_-]{0,31}");

  public PointName {
    if (!isValid(text)) {
      throw new IllegalArgumentException(
          "point name '%s' is not 1 to 32 of a-z, 0-9, - and _, a letter first".formatted(text));
    }
  }

  /** Whether the text would make a name. */
  public static boolean isValid(String text) {
    return SHAPE.matcher(text).matches();
  }

  @Override
  public int compareTo(PointName other) {
    return text.compareTo(other.text);
  }

  @Override
  public String toString() {
    return text;
  }
}
