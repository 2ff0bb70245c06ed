package feedwitness.settings;

import java.time.Duration;

/**
 * How a probe is to be checked.
 *
 * @param tolerancePercent half-width of the error allowed, %, 0.1 to 20
 * @param interval between checks at first
 * @param longestInterval it may grow to, not below {@code interval}
 */
public record CheckRule(double tolerancePercent, Duration interval, Duration longestInterval) {
  /** 3 %, a week, eight weeks. */
  public static final CheckRule USUAL = new CheckRule(3, Duration.ofDays(7), Duration.ofDays(56));

  /**
   * Checks the order of the intervals.
   *
   * @throws IllegalArgumentException naming both
   */
  public CheckRule {
    if (longestInterval.compareTo(interval) < 0) {
      throw new IllegalArgumentException(
          "the longest interval %s is below the interval %s; make it as long at least"
              .formatted(DurationText.of(longestInterval), DurationText.of(interval)));
    }
  }
}
