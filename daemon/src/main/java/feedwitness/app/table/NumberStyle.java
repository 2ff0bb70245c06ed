package feedwitness.app.table;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** How a table writes numbers. */
public enum NumberStyle {
  /** 1,413.5 */
  POINT('.', ','),
  /** 1.413,5 */
  COMMA(',', '.');

  /** What loggers write where there is no number. */
  private static final Set<String> EMPTY =
      Set.of("", "nan", "na", "n/a", "null", "none", "-", "--", "---", "#n/a");

  private static final int LONGEST = 40;

  private final char decimal;
  private final Pattern plain;
  private final Pattern grouped;

  NumberStyle(char decimal, char group) {
    this.decimal = decimal;
    String point = Pattern.quote(String.valueOf(decimal));
    this.plain =
        Pattern.compile(
            "[+-]?(?:\\d+(?:%s\\d*)?|%s\\d+)(?:[eE][+-]?\\d{1,3})?".formatted(point, point));
    this.grouped =
        Pattern.compile(
            "[+-]?\\d{1,3}(?:[%s '\u2019\u00a0\u202f]\\d{3})+(?:%s\\d*)?"
                .formatted(Pattern.quote(String.valueOf(group)), point));
  }

  /** Whether a field says that there is no number. */
  static boolean isEmpty(String field) {
    return EMPTY.contains(field.toLowerCase(Locale.ROOT));
  }

  /** The number of a field; NaN if it is none in this style. */
  public double parse(String field) {
    if (field.length() > LONGEST) {
      return Double.NaN;
    }
    if (plain.matcher(field).matches()) {
      return Double.parseDouble(field.replace(decimal, '.'));
    }
    if (grouped.matcher(field).matches()) {
      StringBuilder digits = new StringBuilder();
      for (int i = 0; i < field.length(); i++) {
        char c = field.charAt(i);
        if (c == decimal) {
          digits.append('.');
        } else if (Character.isDigit(c) || c == '-') {
          digits.append(c);
        }
      }
      return Double.parseDouble(digits.toString());
    }
    return Double.NaN;
  }
}
