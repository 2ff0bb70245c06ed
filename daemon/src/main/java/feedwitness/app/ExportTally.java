package feedwitness.app;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;

/** Counts rows of an export as they pass. A row that begins with a separator has no time. */
final class ExportTally extends FilterOutputStream {
  private long lines;
  private long undated;
  private boolean lineStart = true;

  ExportTally(OutputStream out) {
    super(out);
  }

  @Override
  public void write(int octet) throws IOException {
    count((byte) octet);
    out.write(octet);
  }

  @Override
  public void write(byte[] octets, int from, int length) throws IOException {
    for (int i = from; i < from + length; i++) {
      count(octets[i]);
    }
    out.write(octets, from, length);
  }

  private void count(byte octet) {
    if (lineStart && (octet == ',' || octet == ';' || octet == '\t')) {
      undated++;
    }
    lineStart = octet == '\n';
    if (lineStart) {
      lines++;
    }
  }

  String words(String where) {
    long rows = Math.max(0, lines - 1);
    String words = "%d readings written%s".formatted(rows, where);
    return undated == 0
        ? words + "."
        : words
            + "; %d of them have no time: they were taken before the clock was right (see columns id and undated_s)."
                .formatted(undated);
  }
}
