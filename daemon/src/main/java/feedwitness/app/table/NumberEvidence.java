package feedwitness.app.table;

import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Gathers from the numbers of a whole file how it writes them. A comma before three last digits
 * alone ({@code 1,413}) may be either; a point before three last digits is a decimal point unless
 * others prove otherwise.
 */
public final class NumberEvidence {
  private static final int LONGEST = 40;
  private static final Pattern LOOKS_LIKE_ONE =
      Pattern.compile("[+-]?[0-9.,][0-9., '\u2019\u00a0\u202f]*(?:[eE].*)?");

  private long point;
  private long comma;
  private long doubtfulComma;
  private String doubtful = "";

  /** Looks at one field. */
  public void add(String field) {
    if (field.length() > LONGEST || !LOOKS_LIKE_ONE.matcher(field).matches()) {
      return;
    }
    int lastPoint = field.lastIndexOf('.');
    int lastComma = field.lastIndexOf(',');
    if (lastPoint < 0 && lastComma < 0) {
      return;
    }
    char mark = lastPoint > lastComma ? '.' : ',';
    boolean both = lastPoint >= 0 && lastComma >= 0;
    boolean several = field.indexOf(mark) != field.lastIndexOf(mark);
    if (both) {
      vote(mark);
    } else if (several) {
      vote(mark == '.' ? ',' : '.');
    } else if (looksGrouped(field, mark)) {
      if (mark == ',') {
        doubtfulComma++;
        doubtful = field;
      }
    } else {
      vote(mark);
    }
  }

  private static boolean looksGrouped(String field, char mark) {
    int at = field.indexOf(mark);
    String before = field.substring(0, at).replaceFirst("^[+-]", "");
    String after = field.substring(at + 1);
    return after.matches("\\d{3}") && before.matches("[1-9]\\d{0,2}");
  }

  private void vote(char decimal) {
    if (decimal == '.') {
      point++;
    } else {
      comma++;
    }
  }

  /** The style; empty if it cannot be told. */
  public Optional<NumberStyle> style() {
    if (point > 0 && comma > 0) {
      return Optional.empty();
    }
    if (comma > 0) {
      return Optional.of(NumberStyle.COMMA);
    }
    return point == 0 && doubtfulComma > 0 ? Optional.empty() : Optional.of(NumberStyle.POINT);
  }

  /** Why it cannot be told, for people. */
  public String doubt() {
    return point > 0 && comma > 0
        ? "%d numbers have a decimal point and %d a decimal comma".formatted(point, comma)
        : "'%s' may be a thousand and more, or a number with a decimal comma".formatted(doubtful);
  }
}
