package feedwitness.frame;

import feedwitness.frame.FrameOutcome.Frame;
import feedwitness.frame.FrameOutcome.Reason;
import feedwitness.frame.FrameOutcome.Rejection;
import feedwitness.quantity.Octets;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The master's side of Modbus RTU: finds the reply to one request by unit, function, expected
 * length and check, anywhere in what arrives. After each octet it asks whether a reply, an
 * exception reply or the echo of our own request ends here; so the outcomes do not depend on how
 * the octets were cut into pieces, and the work per octet is bounded.
 *
 * <p>A reply to an earlier request looks like one to this request. It cannot be told apart here:
 * after a time-out, keep silent for the instrument's longest reply time before asking again, then
 * throw away what arrived.
 *
 * <p>At most {@link #CAPACITY} octets are held back, and every octet is in exactly one outcome.
 */
public final class ModbusRtuFramer implements Framer {
  /** Octets held back at most: more than two of the longest reply. */
  static final int CAPACITY = 512;

  /** What may still be the beginning of a reply when the buffer is full: the longest, less one. */
  private static final int KEPT = 255;

  private static final int EXCEPTION_LENGTH = 5;
  private static final int EXCEPTION_BIT = 0x80;

  private final byte[] buffer = new byte[CAPACITY];
  private int held;

  /** Where in the buffer something with the head of a reply and a wrong check begins; −1: none. */
  private int damaged = -1;

  private @Nullable Expectation expectation;

  /** What is being waited for. */
  private record Expectation(ModbusRequest request, Octets echo) {}

  /**
   * Waits for the reply to this request from now on, and no longer for that to an earlier one.
   *
   * @return what was held back until now, given up
   */
  public List<FrameOutcome> expect(ModbusRequest request) {
    List<FrameOutcome> leftOver = giveUp();
    expectation = new Expectation(request, request.octets());
    return leftOver;
  }

  @Override
  public List<FrameOutcome> feed(Octets octets) {
    List<FrameOutcome> outcomes = new ArrayList<>();
    for (int i = 0; i < octets.length(); i++) {
      if (held == CAPACITY) {
        reject(CAPACITY - KEPT, outcomes);
      }
      buffer[held++] = (byte) octets.at(i);
      if (expectation != null) {
        lookBack(expectation, outcomes);
      }
    }
    return outcomes;
  }

  /** The request stays expected no longer: a reply after the time-out is no reply. */
  @Override
  public List<FrameOutcome> giveUp() {
    List<FrameOutcome> outcomes = new ArrayList<>();
    int unfinished = damaged >= 0 ? -1 : beginningOfReply();
    if (unfinished >= 0) {
      reject(unfinished, outcomes);
      Octets piece = take(held);
      outcomes.add(
          new Rejection(
              piece,
              Reason.INCOMPLETE,
              "the reply stopped in the middle, after %d octets".formatted(piece.length())));
    } else {
      reject(held, outcomes);
    }
    expectation = null;
    return outcomes;
  }

  /** Asks of the last octet whether a message ends with it. */
  private void lookBack(Expectation expected, List<FrameOutcome> outcomes) {
    ModbusRequest request = expected.request();
    if (endsWith(expected.echo())) {
      reject(held - expected.echo().length(), outcomes);
      outcomes.add(
          new Rejection(take(held), Reason.ECHO, "our own request, heard back from the bus"));
    } else if (endsReply(expected, request.replyLength())) {
      accept(request.replyLength(), outcomes);
    } else if (endsReply(expected, EXCEPTION_LENGTH)) {
      accept(EXCEPTION_LENGTH, outcomes);
    }
  }

  private boolean endsWith(Octets whole) {
    int start = held - whole.length();
    return start >= 0 && matches(whole, start, whole.length());
  }

  private boolean matches(Octets whole, int start, int length) {
    for (int i = 0; i < length; i++) {
      if ((buffer[start + i] & 0xff) != whole.at(i)) {
        return false;
      }
    }
    return true;
  }

  private boolean endsReply(Expectation expected, int length) {
    int start = held - length;
    if (start < 0 || !headMatches(expected.request(), start, length)) {
      return false;
    }
    if (length < expected.echo().length() && matches(expected.echo(), start, length)) {
      // The first octets of our echo can have the form of a reply of one register, check and all.
      return false;
    }
    int sent = (buffer[held - 2] & 0xff) | (buffer[held - 1] & 0xff) << 8;
    if (ModbusCrc.of(buffer, start, length - 2) == sent) {
      return true;
    }
    if (damaged < 0) {
      damaged = start;
    }
    return false;
  }

  /** Whether the octets from {@code start}, as far as there are, begin a reply of that length. */
  private boolean headMatches(ModbusRequest request, int start, int length) {
    boolean exception = length == EXCEPTION_LENGTH;
    int there = held - start;
    return (buffer[start] & 0xff) == request.unit()
        && (there < 2
            || (buffer[start + 1] & 0xff)
                == (exception ? request.function() | EXCEPTION_BIT : request.function()))
        && (there < 3 || exception || (buffer[start + 2] & 0xff) == 2 * request.count());
  }

  private int beginningOfReply() {
    if (expectation == null) {
      return -1;
    }
    ModbusRequest request = expectation.request();
    for (int start = 0; start < held; start++) {
      int there = held - start;
      if ((there < request.replyLength() && headMatches(request, start, request.replyLength()))
          || (there < EXCEPTION_LENGTH && headMatches(request, start, EXCEPTION_LENGTH))) {
        return start;
      }
    }
    return -1;
  }

  private void accept(int length, List<FrameOutcome> outcomes) {
    reject(held - length, outcomes);
    outcomes.add(new Frame(take(length)));
    expectation = null;
  }

  /** Rejects the first {@code count} octets held, what is damaged apart from what is foreign. */
  private void reject(int count, List<FrameOutcome> outcomes) {
    int foreign = damaged >= 0 ? Math.min(damaged, count) : count;
    int rest = count - foreign;
    if (foreign > 0) {
      outcomes.add(
          new Rejection(
              take(foreign),
              Reason.NOISE,
              expectation == null
                  ? "nothing more was asked for"
                  : "not from the reply of " + expectation.request().text()));
    }
    if (rest > 0) {
      outcomes.add(
          new Rejection(
              take(rest), Reason.BAD_CHECKSUM, "the check does not fit; check wiring and baud"));
    }
  }

  /** Removes the first {@code count} octets held. */
  private Octets take(int count) {
    Octets first = Octets.of(buffer, 0, count);
    System.arraycopy(buffer, count, buffer, 0, held - count);
    held -= count;
    damaged = damaged >= count ? damaged - count : -1;
    return first;
  }
}
