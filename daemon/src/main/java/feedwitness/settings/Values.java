package feedwitness.settings;

import java.math.BigDecimal;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;

/** Says what a TOML value is, for messages. */
final class Values {
  private static final int LONGEST = 120;
  private static final int LONGEST_MESSAGE = 300;

  private Values() {}

  /** One line short enough to stand within a message. */
  static String clip(String text) {
    String line = line(text);
    return line.length() > LONGEST ? line.substring(0, LONGEST) + "…" : line;
  }

  /** One line short enough to be a message. */
  static String line(String text) {
    String line = text.replaceAll("[\\p{Cntrl}\u0085\u2028\u2029]+", " ");
    return line.length() > LONGEST_MESSAGE ? line.substring(0, LONGEST_MESSAGE) + "…" : line;
  }

  /** Refuses a number with a decimal comma, saying how to write it. */
  static void refuseDecimalComma(String text) {
    if (text.matches(".*[0-9],[0-9].*")) {
      throw new IllegalArgumentException(
          "'%s' has a decimal comma; write %s".formatted(text, text.replace(',', '.')));
    }
  }

  /** Without needless zeros. */
  static String number(double number) {
    return Double.isFinite(number)
        ? new BigDecimal(Double.toString(number)).stripTrailingZeros().toPlainString()
        : Double.toString(number);
  }

  /** As it stands in the file, shortened. */
  static String shown(Object value) {
    if (value instanceof String text) {
      return "\"" + clip(text) + "\"";
    }
    if (value instanceof TomlTable) {
      return "{…}";
    }
    if (value instanceof TomlArray) {
      return "[…]";
    }
    return value instanceof Double number ? number(number) : clip(value.toString());
  }

  /** What kind of value it is. */
  static String kind(Object value) {
    if (value instanceof String) {
      return "text";
    }
    if (value instanceof Long || value instanceof Double) {
      return "a number";
    }
    if (value instanceof Boolean) {
      return "true or false";
    }
    if (value instanceof TomlTable) {
      return "a table";
    }
    return value instanceof TomlArray ? "a list" : "a date or time";
  }

  /** How to write it so that it becomes what is expected. */
  static String remedy(String key, Object raw, String expected) {
    if (raw instanceof String text) {
      String plain = text.strip().replace(',', '.');
      boolean wantsNumber = expected.endsWith("number");
      if (wantsNumber && plain.matches("[-+]?[0-9]{1,15}(\\.[0-9]{1,15})?")) {
        return "write %s = %s, without quotation marks, decimals after a point"
            .formatted(key, plain);
      }
      if (expected.equals("true or false") && plain.matches("true|false")) {
        return "write %s = %s, without quotation marks".formatted(key, plain);
      }
    }
    if (expected.startsWith("text") && (raw instanceof Long || raw instanceof Double)) {
      return "put it in quotation marks, with its unit if it has one: %s = \"%s\""
          .formatted(key, shown(raw));
    }
    return "write %s".formatted(expected);
  }
}
