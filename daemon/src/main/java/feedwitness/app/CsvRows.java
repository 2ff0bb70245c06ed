package feedwitness.app;

import java.io.BufferedReader;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads a table line by line: a header, then rows whose cells are found by the header's names. */
final class CsvRows {
  private static final String BOM_OF_UTF8 = "\u00ef\u00bb\u00bf";

  private final BufferedReader in;
  private final String headerText;
  private final List<String> names;
  private long line = 1;

  /** The table is not what was hoped for; the message says where and what to do. */
  static final class UnfitException extends Exception {
    private static final long serialVersionUID = 1;

    UnfitException(String message) {
      super(message);
    }
  }

  /**
   * One row.
   *
   * @param line of the file, the header being line 1
   * @param text as it stands in the file
   */
  record Row(long line, String text, List<String> cells) {}

  CsvRows(BufferedReader in) throws IOException, UnfitException {
    this.in = in;
    String first = in.readLine();
    if (first == null || first.isBlank()) {
      throw new UnfitException(
          "line 1 is empty; it must name the columns, as in"
              + " time,conductivity_uS_cm,temperature_C");
    }
    headerText = first.startsWith(BOM_OF_UTF8) ? first.substring(BOM_OF_UTF8.length()) : first;
    names = cells(headerText).stream().map(String::strip).toList();
  }

  String headerText() {
    return headerText;
  }

  boolean has(String name) {
    return names.contains(name);
  }

  /** Where a column is, counted from 0. */
  int column(String name) throws UnfitException {
    int at = names.indexOf(name);
    if (at < 0) {
      throw new UnfitException(
          "line 1 has no column %s, only %s; rename the column that holds it"
              .formatted(name, String.join(", ", names)));
    }
    if (names.lastIndexOf(name) != at) {
      throw new UnfitException("line 1 has column %s twice; keep one".formatted(name));
    }
    return at;
  }

  /** The next row that is not blank; null at the end. */
  @Nullable Row next() throws IOException, UnfitException {
    String text = nextLine();
    return text == null ? null : row(text);
  }

  /** The text of the next row that is not blank; null at the end. */
  @Nullable String nextLine() throws IOException {
    for (String text = in.readLine(); text != null; text = in.readLine()) {
      line++;
      if (!text.isBlank()) {
        return text;
      }
    }
    return null;
  }

  /** The cells of the row whose text was given last. */
  Row row(String text) throws UnfitException {
    List<String> cells = cells(text);
    if (cells.size() != names.size()) {
      throw new UnfitException(
          "line %d has %d cells where line 1 has %d; give each column a cell, empty if missing"
              .formatted(line, cells.size(), names.size()));
    }
    return new Row(line, text, cells);
  }

  /** Cells parted by commas; a cell in quotes may hold commas, and quotes if doubled. */
  private List<String> cells(String text) throws UnfitException {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"' && quoted && i + 1 < text.length() && text.charAt(i + 1) == '"') {
        cell.append(c);
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
    if (quoted) {
      throw new UnfitException(
          "line %d ends inside quotes; close them, a cell must stay on one line".formatted(line));
    }
    cells.add(cell.toString());
    return cells;
  }
}
