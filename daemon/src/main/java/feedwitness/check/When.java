package feedwitness.check;

import feedwitness.quantity.TimeSource;
import java.time.Duration;
import java.time.Instant;

/**
 * Now, on both clocks.
 *
 * @param monotonicNanos for how long something takes
 * @param wall for records
 */
public record When(long monotonicNanos, Instant wall) {

  /** As the clocks stand. */
  public static When of(TimeSource time) {
    return new When(time.monotonicNanos(), time.wall());
  }

  Duration since(When earlier) {
    return Duration.ofNanos(monotonicNanos - earlier.monotonicNanos);
  }
}
