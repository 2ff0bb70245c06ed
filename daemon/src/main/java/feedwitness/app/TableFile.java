package feedwitness.app;

import feedwitness.app.table.LineReader;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A table as a file, read from its beginning as often as needed.
 *
 * @param charset as found: UTF-8, UTF-16, or Windows-1252 where it is neither
 */
record TableFile(Path path, Charset charset) {
  private static final int SAMPLE = 1 << 16;
  private static final Charset WINDOWS = Charset.forName("windows-1252");

  /**
   * Looks at the beginning of a file.
   *
   * @throws IOException in words for people, if it cannot be read or is no text
   */
  static TableFile open(Path path) throws IOException {
    if (!Files.isRegularFile(path) || !Files.isReadable(path)) {
      throw new IOException(
          "%s is no file that can be read; check the name and your rights".formatted(path));
    }
    byte[] sample;
    try (InputStream in = Files.newInputStream(path)) {
      sample = in.readNBytes(SAMPLE);
    }
    if (sample.length > 3 && sample[0] == 'P' && sample[1] == 'K' && sample[2] < 9) {
      throw new IOException(
          "%s is a spreadsheet or an archive, not a text; save it as CSV first".formatted(path));
    }
    return new TableFile(path, charset(sample));
  }

  private static Charset charset(byte[] sample) {
    if (sample.length >= 2) {
      int mark = (sample[0] & 0xff) << 8 | (sample[1] & 0xff);
      if (mark == 0xfeff || mark == 0xfffe) {
        return StandardCharsets.UTF_16;
      }
    }
    // a character cut at the end of the sample is no fault of the file
    for (int cut = 0; cut < 4 && cut <= sample.length; cut++) {
      try {
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .decode(ByteBuffer.wrap(sample, 0, sample.length - cut));
        return StandardCharsets.UTF_8;
      } catch (CharacterCodingException e) {
        if (sample.length < SAMPLE) {
          return WINDOWS;
        }
      }
    }
    return WINDOWS;
  }

  /** Takes a line and its number. */
  interface Line {
    void at(long number, String text) throws IOException;
  }

  /** Goes through all lines from {@code from} on. */
  void forEach(long from, Line each) throws IOException {
    try (BufferedReader in =
        new BufferedReader(new InputStreamReader(Files.newInputStream(path), charset))) {
      LineReader lines = new LineReader(in);
      for (@Nullable String line = lines.next(); line != null; line = lines.next()) {
        if (lines.number() >= from) {
          each.at(lines.number(), lines.number() == 1 ? withoutMark(line) : line);
        }
      }
    }
  }

  /** The first lines, blank ones too. */
  List<String> head(int most) throws IOException {
    List<String> head = new ArrayList<>();
    try (BufferedReader in =
        new BufferedReader(new InputStreamReader(Files.newInputStream(path), charset))) {
      LineReader lines = new LineReader(in);
      for (@Nullable String line = lines.next();
          line != null && head.size() < most;
          line = lines.next()) {
        head.add(head.isEmpty() ? withoutMark(line) : line);
      }
    }
    return head;
  }

  private static String withoutMark(String line) {
    return line.startsWith("\ufeff") ? line.substring(1) : line;
  }
}
