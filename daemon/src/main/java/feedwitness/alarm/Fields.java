package feedwitness.alarm;

import java.util.List;
import java.util.Optional;

/** Texts on one line, separated by tabs; a dash stands for none. */
final class Fields {
  private static final String NONE = "-";

  private Fields() {}

  /** Puts them together. */
  static final class Writer {
    private final StringBuilder line = new StringBuilder();

    Writer add(String... texts) {
      for (String text : texts) {
        raw("=" + escaped(text));
      }
      return this;
    }

    Writer add(Optional<String> text) {
      if (text.isPresent()) {
        return add(text.get());
      }
      raw(NONE);
      return this;
    }

    private void raw(String field) {
      line.append(line.length() == 0 ? "" : "\t").append(field);
    }

    String line() {
      return line.toString();
    }

    private static String escaped(String text) {
      return text.replace("\\", "\\\\").replace("\t", "\\t").replace("\n", "\\n");
    }
  }

  /** Takes them apart; everything unexpected is an IllegalArgumentException. */
  static final class Reader {
    private final List<String> fields;
    private int next;

    Reader(String line) {
      fields = List.of(line.split("\t", -1));
    }

    Optional<String> optional() {
      if (next >= fields.size()) {
        throw new IllegalArgumentException("a line of %d fields is too short".formatted(next));
      }
      String field = fields.get(next++);
      if (field.equals(NONE)) {
        return Optional.empty();
      }
      if (!field.startsWith("=")) {
        throw new IllegalArgumentException("field %d is damaged".formatted(next));
      }
      return Optional.of(plain(field));
    }

    String text() {
      return optional().orElseThrow(() -> new IllegalArgumentException("a field is not there"));
    }

    void end() {
      if (next != fields.size()) {
        throw new IllegalArgumentException(
            "a line of %d fields is too long".formatted(fields.size()));
      }
    }

    private static String plain(String field) {
      StringBuilder plain = new StringBuilder();
      for (int i = 1; i < field.length(); i++) {
        char c = field.charAt(i);
        if (c == '\\' && i + 1 < field.length()) {
          i++;
          char escaped = field.charAt(i);
          plain.append(escaped == 't' ? '\t' : escaped == 'n' ? '\n' : escaped);
        } else {
          plain.append(c);
        }
      }
      return plain.toString();
    }
  }
}
