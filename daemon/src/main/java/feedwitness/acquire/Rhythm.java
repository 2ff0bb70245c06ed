package feedwitness.acquire;

import feedwitness.quantity.TimeSource;
import java.time.Duration;

/**
 * When to ask an instrument next. Asks one that does not answer less often, so that it does not
 * slow down its neighbours on the bus.
 */
final class Rhythm {
  private static final Duration SLOWEST_RETRY = Duration.ofSeconds(5);

  private final Duration interval;
  private final TimeSource ticks;
  private long dueNanos;
  private int failures;

  Rhythm(Duration interval, TimeSource ticks) {
    this.interval = interval;
    this.ticks = ticks;
    this.dueNanos = ticks.monotonicNanos();
  }

  /** How long until the next question; zero or negative when it is due. */
  long nanosLeft() {
    return dueNanos - ticks.monotonicNanos();
  }

  void answered() {
    failures = 0;
    next(interval);
  }

  void failed() {
    failures = Math.min(failures + 1, 10);
    Duration slowed = interval.multipliedBy(1L << Math.min(failures - 1, 6));
    Duration ceiling = interval.compareTo(SLOWEST_RETRY) > 0 ? interval : SLOWEST_RETRY;
    next(slowed.compareTo(ceiling) > 0 ? ceiling : slowed);
  }

  private void next(Duration pause) {
    long now = ticks.monotonicNanos();
    dueNanos += pause.toNanos();
    if (dueNanos < now) {
      // Fallen behind: keep the distance rather than catch up in a burst.
      dueNanos = now + pause.toNanos();
    }
  }
}
