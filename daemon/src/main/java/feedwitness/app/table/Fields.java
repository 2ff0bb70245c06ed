package feedwitness.app.table;

import java.util.ArrayList;
import java.util.List;

/** Cuts a line into fields. A quotation mark never reaches beyond its line. */
public final class Fields {
  /** No table of readings has more columns. */
  static final int MOST = 500;

  private static final char QUOTE = '"';

  private Fields() {}

  /** Fields without blanks around them and without quotation marks. */
  public static List<String> of(String line, char separator) {
    List<String> fields = new ArrayList<>();
    StringBuilder field = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == QUOTE) {
        boolean doubled = quoted && i + 1 < line.length() && line.charAt(i + 1) == QUOTE;
        if (doubled) {
          field.append(QUOTE);
          i++;
        } else {
          quoted = !quoted;
        }
      } else if (c == separator && !quoted && fields.size() < MOST) {
        fields.add(field.toString().strip());
        field.setLength(0);
      } else {
        field.append(c);
      }
    }
    fields.add(field.toString().strip());
    return fields;
  }

  /**
   * The separator of the first lines of a file: TAB or semicolon if they cut most lines alike, else
   * comma, which may also stand inside numbers.
   */
  public static char separator(List<String> lines) {
    for (char candidate : new char[] {'\t', ';', ','}) {
      long cut = lines.stream().filter(line -> of(line, candidate).size() > 1).count();
      if (cut > 0 && cut * 2 >= lines.size()) {
        return candidate;
      }
    }
    return ',';
  }
}
