package feedwitness.acquire;

import feedwitness.quantity.Octets;
import feedwitness.quantity.PointName;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.sample.Missing.Cause;
import feedwitness.sample.Reading;
import java.time.Duration;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.tinylog.Logger;

/**
 * Knows whether a probe is heard. Turns readings into indications and their absence into {@code
 * Missing}: at once when the wire is lost, otherwise when nothing was understood for {@link
 * #patience}. While nothing comes it says so again every {@link #REMIND}, so that a long gap is on
 * record as a gap. One thread.
 */
final class ProbeWatch {
  /** The promise is "within max(3 s, 2 × interval)"; a little less leaves time to show it. */
  private static final Duration SHORTEST_PATIENCE = Duration.ofMillis(2500);

  private static final double PATIENCE_INTERVALS = 1.75;
  private static final Duration REMIND = Duration.ofSeconds(60);

  private final PointName point;
  private final Duration patience;
  private final SampleSink sink;
  private final TimeSource ticks;

  private long quietSinceNanos;
  private @Nullable Trouble trouble;
  private @Nullable Cause reported;
  private long reportedNanos;
  private long missingSinceNanos;

  private record Trouble(Cause cause, String detail, long atNanos) {}

  ProbeWatch(ProbePlan plan, SampleSink sink, TimeSource ticks) {
    this.point = plan.point();
    this.sink = sink;
    this.ticks = ticks;
    Duration intervals =
        Duration.ofNanos((long) (plan.profile().interval().toNanos() * PATIENCE_INTERVALS));
    this.patience = intervals.compareTo(SHORTEST_PATIENCE) > 0 ? intervals : SHORTEST_PATIENCE;
    this.quietSinceNanos = ticks.monotonicNanos();
  }

  /** The wire is open; the probe gets its time to speak. */
  void opened() {
    quietSinceNanos = ticks.monotonicNanos();
    trouble = null;
  }

  /** {@code messages} are what it was read from. */
  void reading(Reading reading, List<Octets> messages) {
    sink.accept(stamp -> new Indication(point, stamp, reading, Indication.Origin.PROBE), messages);
    long now = ticks.monotonicNanos();
    if (reported != null) {
      Logger.info(
          "{}: reading again, after {} s without",
          point,
          Duration.ofNanos(now - missingSinceNanos).toSeconds());
      reported = null;
    }
    quietSinceNanos = now;
    trouble = null;
  }

  /** Something came, but no reading; reported if it stays so. */
  void note(Cause cause, String detail) {
    trouble = new Trouble(cause, detail, ticks.monotonicNanos());
  }

  /** The wire itself is lost or cannot be opened: reported at once. */
  void lost(Cause cause, String detail) {
    // A pulled cable first shows as a lost port, then as a port that is not there: one event.
    Cause kept =
        reported == Cause.CABLE_PULLED && cause == Cause.NO_SUCH_PORT ? Cause.CABLE_PULLED : cause;
    report(kept, detail);
  }

  /** Called several times a second while the wire is open. */
  void tick(String silence) {
    long now = ticks.monotonicNanos();
    long quiet = now - quietSinceNanos;
    if (quiet < patience.toNanos()) {
      return;
    }
    Trouble known = trouble;
    if (known != null && now - known.atNanos() < patience.toNanos()) {
      report(known.cause(), known.detail());
    } else {
      report(
          Cause.SILENT,
          "%s; nothing for %d s".formatted(silence, Duration.ofNanos(quiet).toSeconds()));
    }
  }

  private void report(Cause cause, String detail) {
    long now = ticks.monotonicNanos();
    if (cause == reported && now - reportedNanos < REMIND.toNanos()) {
      return;
    }
    if (reported == null) {
      missingSinceNanos = quietSinceNanos;
    }
    if (cause != reported) {
      Logger.warn("{}: {}: {}", point, cause.words(), detail);
    }
    reported = cause;
    reportedNanos = now;
    sink.accept(stamp -> new Missing(point, stamp, cause, detail));
  }

  /** How long nothing may be understood before that is reported. */
  Duration patience() {
    return patience;
  }

  /** How long nothing has been understood. */
  Duration quiet() {
    return Duration.ofNanos(ticks.monotonicNanos() - quietSinceNanos);
  }
}
