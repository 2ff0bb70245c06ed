package feedwitness.solution;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Tables of test data: first line not starting with # names the columns. */
final class Csv {
  private Csv() {}

  /** Cells by the name of their column. */
  record Row(Map<String, String> cells) {
    /** Empty where there is none. */
    String text(String column) {
      return cells.getOrDefault(column, "");
    }

    double number(String column) {
      return Double.parseDouble(text(column));
    }
  }

  static List<Row> resource(String name) {
    InputStream stream = Objects.requireNonNull(Csv.class.getResourceAsStream(name), name);
    try (BufferedReader reader =
        new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
      return rows(reader.lines().toList());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static List<Row> file(Path path) throws IOException {
    return rows(Files.readAllLines(path));
  }

  private static List<Row> rows(List<String> lines) {
    List<Row> rows = new ArrayList<>();
    List<String> header = List.of();
    for (String line : lines) {
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      List<String> cells = cells(line);
      if (header.isEmpty()) {
        header = cells;
        continue;
      }
      Map<String, String> row = new LinkedHashMap<>();
      for (int i = 0; i < header.size(); i++) {
        row.put(header.get(i), i < cells.size() ? cells.get(i) : "");
      }
      rows.add(new Row(row));
    }
    return rows;
  }

  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '"') {
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
}
