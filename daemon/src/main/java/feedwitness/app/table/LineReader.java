package feedwitness.app.table;

import java.io.IOException;
import java.io.Reader;
import org.jspecify.annotations.Nullable;

/** Lines of a text, counted, none longer than a limit: a file without line ends fills no memory. */
public final class LineReader {
  static final int LONGEST = 8_000;

  private final Reader in;
  private final StringBuilder line = new StringBuilder();
  private final char[] buffer = new char[1 << 14];
  private int next;
  private int end;
  private long number;
  private boolean afterReturn;

  public LineReader(Reader in) {
    this.in = in;
  }

  /** Number of the line read last, from 1. */
  public long number() {
    return number;
  }

  /** The next line without its end, cut at the limit; null after the last. */
  public @Nullable String next() throws IOException {
    line.setLength(0);
    boolean any = false;
    while (true) {
      if (next == end) {
        end = in.read(buffer);
        next = 0;
        if (end < 0) {
          end = 0;
          number += any ? 1 : 0;
          return any ? line.toString() : null;
        }
      }
      char c = buffer[next++];
      if (c == '\n' && afterReturn) {
        afterReturn = false;
        continue;
      }
      afterReturn = c == '\r';
      if (c == '\n' || c == '\r') {
        number++;
        return line.toString();
      }
      any = true;
      if (line.length() < LONGEST) {
        line.append(c);
      }
    }
  }
}
