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

/** An instrument that sends a line when asked. */
final class AskedLine implements Conversation {
  private final Protocol.Line protocol;
  private final Octets query;
  private final Decoder decoder;
  private final Duration longestReply;
  private final ProbeWatch watch;
  private final WireObserver observer;
  private final Exchange exchange;
  private final Rhythm rhythm;
  private final String silence;

  AskedLine(
      PortPlan plan, ProbePlan probe, ProbeWatch watch, WireObserver observer, TimeSource ticks) {
    this.protocol = (Protocol.Line) probe.profile().protocol();
    this.query = protocol.query().orElse(Octets.NONE);
    this.decoder = Decoder.of(probe.profile());
    this.longestReply = probe.profile().longestReply();
    this.watch = watch;
    this.observer = observer;
    this.exchange = new Exchange(observer, ticks);
    this.rhythm = new Rhythm(probe.profile().interval(), ticks);
    this.silence =
        "no answer to '%s' on %s; check that the instrument is on and set to %s"
            .formatted(query.toPrintable(), plan.link().text(), plan.serial().text());
  }

  @Override
  public void begin() {}

  @Override
  public void step(Port port) throws PortLostException {
    long left = rhythm.nanosLeft();
    if (left > 0) {
      port.read((int) Math.max(1, Math.min(STEP_MILLIS, left / 1_000_000)));
    } else if (ask(port)) {
      rhythm.answered();
    } else {
      rhythm.failed();
      exchange.keepSilent(port, longestReply);
    }
    watch.tick(silence);
  }

  private boolean ask(Port port) throws PortLostException {
    LineFramer framer = LineFramer.afterQuery(protocol.longestLine());
    List<FrameOutcome> outcomes = exchange.ask(port, framer, query, longestReply);
    for (FrameOutcome outcome : outcomes) {
      if (outcome instanceof FrameOutcome.Frame frame) {
        DecodeOutcome decoded = decoder.decode(List.of(frame));
        observer.decoded(decoded);
        Understanding.apply(decoded, List.of(frame), watch);
        return decoded instanceof DecodeOutcome.Decoded;
      }
      watch.note(Cause.UNREADABLE, Understanding.ofRejection((FrameOutcome.Rejection) outcome));
    }
    return false;
  }
}
