package feedwitness.acquire;

import feedwitness.quantity.Octets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A tape as text, a line an event: {@code wire nanos wall-millis kind rest}, where the rest is
 * octets in hexadecimal or words. The first line says what it is, the second when it began.
 */
final class TapeText {
  private static final String HEAD = "feedwitness tape 1";

  private TapeText() {}

  static List<String> head(long wallMillis) {
    return List.of(HEAD, "began " + wallMillis);
  }

  static String write(TapeEvent event) {
    String rest = event.words().isEmpty() ? event.octets().toHex() : escape(event.words());
    String line =
        "%d %d %d %s"
            .formatted(
                event.wire(),
                event.nanos(),
                event.wallMillis(),
                event.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    return rest.isEmpty() ? line : line + " " + rest;
  }

  /** Words must come back exactly: they stand in what is measured from them. */
  private static String escape(String words) {
    return words.replace("\\", "\\\\").replace("\n", "\\n").replace("\r", "\\r");
  }

  private static String unescape(String text) {
    StringBuilder words = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char here = text.charAt(i);
      if (here == '\\' && i + 1 < text.length()) {
        char next = text.charAt(++i);
        words.append(next == 'n' ? '\n' : next == 'r' ? '\r' : next);
      } else {
        words.append(here);
      }
    }
    return words.toString();
  }

  /**
   * Wall time at which a tape began.
   *
   * @throws IllegalArgumentException if it is no tape of this version
   */
  static long began(List<String> lines) {
    if (lines.size() < 2 || !lines.get(0).equals(HEAD) || !lines.get(1).matches("began -?\\d+")) {
      throw new IllegalArgumentException(
          "this is no tape: it must begin with '%s' and 'began MILLIS'".formatted(HEAD));
    }
    return Long.parseLong(lines.get(1).substring("began ".length()));
  }

  /**
   * The events of a tape.
   *
   * @throws IllegalArgumentException naming the line that cannot be read
   */
  static List<TapeEvent> read(List<String> lines) {
    began(lines);
    List<TapeEvent> events = new ArrayList<>();
    for (int i = 2; i < lines.size(); i++) {
      if (!lines.get(i).isBlank()) {
        events.add(event(lines.get(i), i + 1));
      }
    }
    return List.copyOf(events);
  }

  private static TapeEvent event(String line, int number) {
    String[] words = line.split(" ", 5);
    try {
      TapeEvent.Kind kind =
          TapeEvent.Kind.valueOf(words[3].toUpperCase(Locale.ROOT).replace('-', '_'));
      String rest = words.length > 4 ? words[4] : "";
      boolean octets = kind == TapeEvent.Kind.READ || kind == TapeEvent.Kind.SENT;
      return new TapeEvent(
          Integer.parseInt(words[0]),
          Long.parseLong(words[1]),
          Long.parseLong(words[2]),
          kind,
          octets ? Octets.ofHex(rest) : Octets.NONE,
          octets ? "" : unescape(rest));
    } catch (IllegalArgumentException | ArrayIndexOutOfBoundsException e) {
      throw new IllegalArgumentException(
          "line %d of the tape cannot be read: '%s'".formatted(number, line), e);
    }
  }
}
