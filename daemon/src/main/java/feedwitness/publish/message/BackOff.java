package feedwitness.publish.message;

import java.time.Duration;
import java.util.random.RandomGenerator;

/**
 * How long to wait after attempts in a row that failed: 15 s, doubled each time up to 15 min, each
 * shortened at random by up to half, so that many services do not come back at once.
 */
final class BackOff {
  static final Duration FIRST = Duration.ofSeconds(15);
  static final Duration LONGEST = Duration.ofMinutes(15);
  private static final int MOST_DOUBLINGS = 10;

  private final RandomGenerator random;

  BackOff(RandomGenerator random) {
    this.random = random;
  }

  /**
   * The wait.
   *
   * @param failures attempts in a row that failed, from 1
   */
  Duration after(int failures) {
    Duration full = FIRST.multipliedBy(1L << Math.min(failures - 1, MOST_DOUBLINGS));
    return shortened(full.compareTo(LONGEST) > 0 ? LONGEST : full);
  }

  /** The wait where somebody has to mend something first. */
  Duration longest() {
    return shortened(LONGEST);
  }

  private Duration shortened(Duration full) {
    return Duration.ofMillis((long) (full.toMillis() * (1 - random.nextDouble() / 2)));
  }
}
