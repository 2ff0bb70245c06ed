package feedwitness.publish.message;

import java.time.Duration;
import java.time.Instant;

/**
 * This moment on both clocks.
 *
 * @param wall for people: quiet hours, days, what stands in a message
 * @param steady for waiting: never jumps; its origin means nothing
 * @param dated whether the wall clock can be trusted
 */
record Now(Instant wall, Instant steady, boolean dated) {

  /** When, on the steady clock, something happened that bears a wall time. */
  Instant steady(Instant happened) {
    Duration ago = Duration.between(happened, wall);
    return !dated || ago.isNegative() ? steady : steady.minus(ago);
  }

  /** What the clock on the wall will show then. */
  Instant wall(Instant steadyThen) {
    return wall.plus(Duration.between(steady, steadyThen));
  }
}
