package feedwitness.check;

import java.time.Duration;

/**
 * How long a check may take.
 *
 * @param settle how long readings may need to come to rest in one standard
 * @param idle how long nothing may happen before the check is closed as abandoned
 * @param away how long after a check readings are kept out of the place's history if they do not
 *     look like the place by then
 */
public record CheckLimits(Duration settle, Duration idle, Duration away) {
  /** A quarter of an hour, an hour, an hour. */
  public static final CheckLimits USUAL =
      new CheckLimits(Duration.ofMinutes(15), Duration.ofHours(1), Duration.ofHours(1));
}
