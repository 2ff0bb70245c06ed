package feedwitness.alarm;

import java.time.Duration;

/**
 * A kind of alarm as it was thought through beforehand (IEC 62682 calls that rationalisation).
 *
 * @param code stable name towards the outside: 1 to 32 of a-z, 0-9 and -
 * @param title for people, a few words
 * @param priority how soon somebody must answer
 * @param consequence what happens if nobody does
 * @param remedy what to do
 * @param onDelay how long the condition must be there before the alarm is raised, 0 to 1 day
 * @param offDelay how long it must be gone before the alarm clears, 0 to 1 day
 */
public record AlarmKind(
    String code,
    String title,
    Priority priority,
    String consequence,
    String remedy,
    Duration onDelay,
    Duration offDelay) {
  /** No delay is longer. */
  public static final Duration LONGEST_DELAY = Duration.ofDays(1);

  public AlarmKind {
    if (!AlarmKey.isValid(AlarmKey.SERVICE, code)) {
      throw new IllegalArgumentException(
          "kind '%s' is not 1 to 32 of a-z, 0-9 and -".formatted(code));
    }
    if (!inRange(onDelay) || !inRange(offDelay)) {
      throw new IllegalArgumentException(
          "a delay of %s is outside 0 to 24 h".formatted(inRange(onDelay) ? offDelay : onDelay));
    }
  }

  private static boolean inRange(Duration delay) {
    return !delay.isNegative() && delay.compareTo(LONGEST_DELAY) <= 0;
  }

  /** The same with another priority and other delays. */
  public AlarmKind with(Priority other, Duration on, Duration off) {
    return new AlarmKind(code, title, other, consequence, remedy, on, off);
  }
}
