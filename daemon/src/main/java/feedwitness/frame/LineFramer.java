package feedwitness.frame;

import feedwitness.frame.FrameOutcome.Frame;
import feedwitness.frame.FrameOutcome.Reason;
import feedwitness.frame.FrameOutcome.Rejection;
import feedwitness.quantity.Octets;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds text lines ended by LF, CR or CR LF. Blank lines are nothing. Every octet that is no
 * terminator is in exactly one outcome, or still held back; at most {@code longestLine} octets are.
 *
 * <p>What comes before the first terminator may be the tail of a line: {@code 13.2,12.4} of {@code
 * 513.2,12.4} looks like a reading and is none. So a framer that joins a stream rejects that first
 * piece as INCOMPLETE, whole or not, and the same goes for the piece after one that was given up.
 * Whoever opens a port anew takes a new framer.
 */
public final class LineFramer implements Framer {
  private static final int LF = '\n';
  private static final int CR = '\r';

  /** What the octets held back belong to. */
  private enum Held {
    /** A line from its beginning. */
    LINE,
    /** Perhaps the tail of a line whose beginning nobody saw. */
    TAIL,
    /** The rest of a line already rejected as too long. */
    EXCESS
  }

  private final byte[] buffer;
  private int held;
  private Held state;

  private LineFramer(int longestLine, Held state) {
    if (longestLine < 8 || longestLine > 4096) {
      throw new IllegalArgumentException(
          "longest line %d is outside 8 to 4096 octets".formatted(longestLine));
    }
    this.buffer = new byte[longestLine];
    this.state = state;
  }

  /**
   * For an instrument that sends by itself: the stream may be joined in the middle of a line.
   *
   * @param longestLine octets, 8 to 4096
   */
  public static LineFramer joining(int longestLine) {
    return new LineFramer(longestLine, Held.TAIL);
  }

  /**
   * For an instrument that answers: nothing came before the first octet, because whatever had
   * arrived was thrown away and then a query was sent.
   *
   * @param longestLine octets, 8 to 4096
   */
  public static LineFramer afterQuery(int longestLine) {
    return new LineFramer(longestLine, Held.LINE);
  }

  @Override
  public List<FrameOutcome> feed(Octets octets) {
    List<FrameOutcome> outcomes = new ArrayList<>();
    for (int i = 0; i < octets.length(); i++) {
      int octet = octets.at(i);
      if (octet == LF || octet == CR) {
        endLine(outcomes);
      } else {
        if (held == buffer.length) {
          overflow(outcomes);
        }
        buffer[held++] = (byte) octet;
      }
    }
    return outcomes;
  }

  @Override
  public List<FrameOutcome> giveUp() {
    if (held == 0) {
      return List.of();
    }
    Octets piece = take();
    boolean excess = state == Held.EXCESS;
    state = Held.TAIL;
    return List.of(
        excess
            ? excess(piece)
            : new Rejection(
                piece,
                Reason.INCOMPLETE,
                "the line stopped after %d octets without an end of line"
                    .formatted(piece.length())));
  }

  private void endLine(List<FrameOutcome> outcomes) {
    Held ended = state;
    state = Held.LINE;
    if (held > 0) {
      Octets piece = take();
      outcomes.add(
          switch (ended) {
            case LINE -> judge(piece);
            case TAIL ->
                new Rejection(
                    piece, Reason.INCOMPLETE, "may be the tail of a line that began unheard");
            case EXCESS -> excess(piece);
          });
    }
  }

  /** A full buffer and one more octet: the line is too long, from its first octet to its end. */
  private void overflow(List<FrameOutcome> outcomes) {
    Octets piece = take();
    outcomes.add(
        state == Held.EXCESS
            ? excess(piece)
            : new Rejection(
                piece,
                Reason.TOO_LONG,
                "no end of line within %d octets; check baud rate, parity and longest-line"
                    .formatted(buffer.length)));
    state = Held.EXCESS;
  }

  private static FrameOutcome judge(Octets line) {
    int stranger = LineText.firstStranger(line);
    return stranger < 0
        ? new Frame(line)
        : new Rejection(
            line,
            Reason.NOISE,
            "octet 0x%02x at place %d cannot stand in a text line; check baud rate and parity"
                .formatted(line.at(stranger), stranger + 1));
  }

  private static FrameOutcome excess(Octets piece) {
    return new Rejection(piece, Reason.NOISE, "rest of a line that was too long");
  }

  private Octets take() {
    Octets piece = Octets.of(buffer, 0, held);
    held = 0;
    return piece;
  }
}
