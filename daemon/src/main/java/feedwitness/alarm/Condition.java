package feedwitness.alarm;

import java.util.Optional;

/**
 * What somebody found out about one possible alarm. Report it whenever it is judged, changed or
 * not: the state machine does the waiting.
 *
 * @param subject a measuring point or {@link AlarmKey#SERVICE}
 * @param kind what was looked for
 * @param presence whether it is there
 * @param value what is observed, in {@code unit}; NaN if there is no number to it
 * @param limit what it is held against, in {@code unit}; NaN if there is none
 * @param unit symbol; empty if there is no number
 * @param words item, value, limit and unit in one sentence
 * @param suppressed why the alarm does not count by design at the moment, such as a line on which
 *     nothing runs
 */
public record Condition(
    String subject,
    AlarmKind kind,
    Presence presence,
    double value,
    double limit,
    String unit,
    String words,
    Optional<String> suppressed) {

  /** A condition without numbers that counts. */
  public static Condition plain(String subject, AlarmKind kind, Presence presence, String words) {
    return new Condition(
        subject, kind, presence, Double.NaN, Double.NaN, "", words, Optional.empty());
  }

  /** The same, not counting by design. */
  public Condition suppressed(Optional<String> why) {
    return new Condition(subject, kind, presence, value, limit, unit, words, why);
  }

  public AlarmKey key() {
    return new AlarmKey(subject, kind.code());
  }
}
