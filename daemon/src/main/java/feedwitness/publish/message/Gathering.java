package feedwitness.publish.message;

import java.time.Duration;
import java.time.Instant;

/**
 * How long the first of some notices waits for others. In a storm, when message follows upon
 * message, the wait doubles up to 15 min; after a calm of twice the wait it is short again. Not for
 * several threads.
 */
final class Gathering {
  static final Duration LONGEST = Duration.ofMinutes(15);

  private final Duration shortest;
  private Duration wait;
  private Instant last = Instant.MIN;

  Gathering(Duration shortest) {
    this.shortest = shortest;
    this.wait = shortest;
  }

  /** Until when a first notice that arrives now waits. */
  Instant until(Instant now) {
    if (last.isBefore(now.minus(wait.multipliedBy(2)))) {
      wait = shortest;
    }
    return now.plus(wait);
  }

  /** A message was made of what had gathered. */
  void closed(Instant now) {
    boolean soon = last.isAfter(now.minus(wait.multipliedBy(3)));
    last = now;
    Duration twice = wait.multipliedBy(2);
    if (soon) {
      wait = twice.compareTo(LONGEST) > 0 ? LONGEST : twice;
    }
  }
}
