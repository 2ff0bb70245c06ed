package feedwitness.acquire;

import feedwitness.profile.Protocol;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Missing.Cause;
import feedwitness.wire.Port;
import feedwitness.wire.PortLostException;
import feedwitness.wire.PortOpener;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.tinylog.Logger;

/**
 * Keeps one wire talking: opens it, converses, and when it is lost tries again with growing pauses
 * for ever. {@link #run} belongs to one thread; {@link #stop} may be called from any.
 */
public final class PortSession implements Runnable {
  private static final Duration FIRST_PAUSE = Duration.ofMillis(250);
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(5);

  /**
   * A wire that stays dumb this long is closed and opened anew: a TCP connection may be dead
   * without a sign, and a stable name may point to another device by now.
   */
  private static final Duration REOPEN_AFTER = Duration.ofSeconds(30);

  private final PortPlan plan;
  private final PortOpener opener;
  private final TimeSource ticks;
  private final WireObserver observer;
  private final Pause rests;
  private final List<ProbeWatch> watches = new ArrayList<>();
  private final Conversation conversation;
  private final CountDownLatch stopped = new CountDownLatch(1);

  /** {@code ticks} is real time: wires do not run faster in a speeded-up demo. */
  public PortSession(
      PortPlan plan, PortOpener opener, TimeSource ticks, SampleSink sink, WireObserver observer) {
    this(plan, opener, ticks, sink, observer, Pause.REAL);
  }

  PortSession(
      PortPlan plan,
      PortOpener opener,
      TimeSource ticks,
      SampleSink sink,
      WireObserver observer,
      Pause rests) {
    this.rests = rests;
    this.plan = plan;
    this.opener = opener;
    this.ticks = ticks;
    this.observer = observer;
    for (ProbePlan probe : plan.probes()) {
      watches.add(new ProbeWatch(probe, sink, ticks));
    }
    this.conversation = conversation();
  }

  private Conversation conversation() {
    ProbePlan first = plan.probes().get(0);
    if (first.profile().protocol() instanceof Protocol.Line line) {
      return line.query().isPresent()
          ? new AskedLine(plan, first, watches.get(0), observer, ticks)
          : new PushedLines(plan, first, watches.get(0), observer, ticks);
    }
    return new ModbusBus(plan, watches, observer, ticks);
  }

  @Override
  public void run() {
    try {
      keepTalking();
    } finally {
      rests.ended();
      Logger.debug("{}: closed", plan.link().text());
    }
  }

  private void keepTalking() {
    Duration pause = FIRST_PAUSE;
    while (isRunning()) {
      PortOpener.Outcome outcome = opener.open(plan.link(), plan.serial());
      if (outcome instanceof PortOpener.Outcome.Opened opened) {
        if (converse(opened.port())) {
          pause = FIRST_PAUSE;
        }
      } else if (outcome instanceof PortOpener.Outcome.Refused refused) {
        observer.trouble(refused.detail());
        watches.forEach(watch -> watch.lost(cause(refused.why()), refused.detail()));
      }
      if (!rests.rest(pause, stopped)) {
        return;
      }
      Duration doubled = pause.multipliedBy(2);
      pause = doubled.compareTo(LONGEST_PAUSE) < 0 ? doubled : LONGEST_PAUSE;
    }
  }

  /** Returns whether anything was understood meanwhile. */
  private boolean converse(Port port) {
    long openedNanos = ticks.monotonicNanos();
    boolean heard = false;
    try (port) {
      observer.opened();
      conversation.begin();
      watches.forEach(ProbeWatch::opened);
      while (isRunning()) {
        conversation.step(port);
        Duration open = Duration.ofNanos(ticks.monotonicNanos() - openedNanos);
        heard |= watches.stream().anyMatch(watch -> watch.quiet().compareTo(open) < 0);
        if (watches.stream().allMatch(watch -> watch.quiet().compareTo(reopenAfter(watch)) > 0)) {
          Logger.info("{}: nothing understood for a while, opening it anew", plan.link().text());
          return heard;
        }
      }
    } catch (PortLostException e) {
      observer.trouble(String.valueOf(e.getMessage()));
      watches.forEach(watch -> watch.lost(Cause.CABLE_PULLED, String.valueOf(e.getMessage())));
    }
    return heard;
  }

  private static Duration reopenAfter(ProbeWatch watch) {
    Duration patient = watch.patience().multipliedBy(3);
    return patient.compareTo(REOPEN_AFTER) > 0 ? patient : REOPEN_AFTER;
  }

  private static Cause cause(PortOpener.Why why) {
    return switch (why) {
      case NO_SUCH_PORT -> Cause.NO_SUCH_PORT;
      case TAKEN -> Cause.PORT_TAKEN;
      case NO_PERMISSION -> Cause.NO_PERMISSION;
      case FAILED -> Cause.PORT_FAILED;
    };
  }

  private boolean isRunning() {
    return stopped.getCount() > 0;
  }

  /** Asks the session to end; it does within about a second. */
  public void stop() {
    stopped.countDown();
  }
}
