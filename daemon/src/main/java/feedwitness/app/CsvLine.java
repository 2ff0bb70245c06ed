package feedwitness.app;

import java.util.ArrayList;
import java.util.List;

/** A line of comma-separated values after RFC 4180, but for line ends within quotes. */
final class CsvLine {
  private CsvLine() {}

  /** The cells, quotes taken off. */
  static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '"' && quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
        cell.append('"');
        i++;
      } else if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString());
    return cells;
  }

  /** One line, quoted where it must be. */
  static String of(List<String> cells) {
    List<String> written = new ArrayList<>();
    for (String cell : cells) {
      boolean plain = cell.indexOf(',') < 0 && cell.indexOf('"') < 0;
      written.add(plain ? cell : '"' + cell.replace("\"", "\"\"") + '"');
    }
    return String.join(",", written);
  }
}
