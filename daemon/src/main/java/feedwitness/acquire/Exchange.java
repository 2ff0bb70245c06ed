package feedwitness.acquire;

import feedwitness.frame.FrameOutcome;
import feedwitness.frame.Framer;
import feedwitness.quantity.Octets;
import feedwitness.quantity.TimeSource;
import feedwitness.wire.Port;
import feedwitness.wire.PortLostException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * One question and its answer. Neither lines nor Modbus RTU number their messages, so a late answer
 * could pass for the next one: after a time-out the wire is listened to, and everything on it
 * thrown away, for the longest reply time.
 */
final class Exchange {
  private static final int SLICE_MILLIS = 50;

  private final WireObserver observer;
  private final TimeSource ticks;

  Exchange(WireObserver observer, TimeSource ticks) {
    this.observer = observer;
    this.ticks = ticks;
  }

  /**
   * Outcomes in order; the last one is a frame if the answer came in time.
   *
   * @param allowed from the end of the question to the end of the answer
   */
  List<FrameOutcome> ask(Port port, Framer framer, Octets question, Duration allowed)
      throws PortLostException {
    port.discardInput();
    port.write(question);
    observer.sent(question);
    List<FrameOutcome> outcomes = new ArrayList<>();
    long deadline = ticks.monotonicNanos() + allowed.toNanos();
    long left = allowed.toNanos();
    while (left > 0) {
      Octets octets = port.read(millis(left));
      if (octets.length() > 0) {
        observer.received(octets);
        if (take(framer.feed(octets), outcomes)) {
          return outcomes;
        }
      }
      left = deadline - ticks.monotonicNanos();
    }
    take(framer.giveUp(), outcomes);
    return outcomes;
  }

  /** Adds outcomes up to and including the first frame; returns whether there was one. */
  private boolean take(List<FrameOutcome> from, List<FrameOutcome> to) {
    for (FrameOutcome outcome : from) {
      observer.framed(outcome);
      to.add(outcome);
      if (outcome instanceof FrameOutcome.Frame) {
        return true;
      }
    }
    return false;
  }

  /** Keeps silent for the given time; whatever arrives is too late. */
  void keepSilent(Port port, Duration howLong) throws PortLostException {
    long deadline = ticks.monotonicNanos() + howLong.toNanos();
    long left = howLong.toNanos();
    while (left > 0) {
      observer.received(port.read(millis(left)));
      left = deadline - ticks.monotonicNanos();
    }
  }

  private static int millis(long nanos) {
    return (int) Math.max(1, Math.min(SLICE_MILLIS, nanos / 1_000_000));
  }
}
