package feedwitness.acquire;

import feedwitness.frame.FrameOutcome;
import feedwitness.frame.LineFramer;
import feedwitness.profile.Protocol;
import feedwitness.quantity.Octets;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.DecodeOutcome;
import feedwitness.sample.Decoder;
import feedwitness.sample.Missing.Cause;
import feedwitness.wire.Port;
import feedwitness.wire.PortLostException;
import java.time.Duration;
import java.util.List;

/** An instrument that sends lines of its own accord. */
final class PushedLines implements Conversation {
  /** A line that stops in the middle this long is given up. */
  private static final Duration HALF_LINE = Duration.ofSeconds(1);

  private final Protocol.Line protocol;
  private final Decoder decoder;
  private final ProbeWatch watch;
  private final WireObserver observer;
  private final TimeSource ticks;
  private final String silence;
  private LineFramer framer;
  private long lastOctetNanos;
  private boolean joining = true;

  PushedLines(
      PortPlan plan, ProbePlan probe, ProbeWatch watch, WireObserver observer, TimeSource ticks) {
    this.protocol = (Protocol.Line) probe.profile().protocol();
    this.decoder = Decoder.of(probe.profile());
    this.watch = watch;
    this.observer = observer;
    this.ticks = ticks;
    this.framer = LineFramer.joining(protocol.longestLine());
    this.silence =
        "no line arrives on %s; check that the instrument is on and that it sends %s"
            .formatted(plan.link().text(), plan.serial().text());
  }

  @Override
  public void begin() {
    framer = LineFramer.joining(protocol.longestLine());
    joining = true;
    lastOctetNanos = ticks.monotonicNanos();
  }

  @Override
  public void step(Port port) throws PortLostException {
    Octets octets = port.read(STEP_MILLIS);
    if (octets.length() > 0) {
      lastOctetNanos = ticks.monotonicNanos();
      observer.received(octets);
      take(framer.feed(octets));
    } else if (ticks.monotonicNanos() - lastOctetNanos > HALF_LINE.toNanos()) {
      take(framer.giveUp());
    }
    watch.tick(silence);
  }

  private void take(List<FrameOutcome> outcomes) {
    for (FrameOutcome outcome : outcomes) {
      observer.framed(outcome);
      if (outcome instanceof FrameOutcome.Frame frame) {
        DecodeOutcome decoded = decoder.decode(List.of(frame));
        observer.decoded(decoded);
        Understanding.apply(decoded, List.of(frame), watch);
      } else if (joining) {
        // The line that was under way when the port was opened: no fault, the next one counts.
        watch.opened();
      } else if (outcome instanceof FrameOutcome.Rejection rejection) {
        watch.note(Cause.UNREADABLE, Understanding.ofRejection(rejection));
      }
      joining = false;
    }
  }
}
