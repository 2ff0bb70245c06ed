package feedwitness.alarm;

import java.util.Comparator;
import java.util.regex.Pattern;

/**
 * Which alarm: what it is about and what kind it is. There is one standing of each.
 *
 * @param subject a measuring point, or {@link #SERVICE}: 1 to 64 of a-z, 0-9, - and _
 * @param kind code of an {@link AlarmKind}: 1 to 32 of a-z, 0-9 and -, a letter first
 */
public record AlarmKey(String subject, String kind) implements Comparable<AlarmKey> {
  /** The service itself. */
  public static final String SERVICE = "service";

  private static final Pattern SUBJECT = Pattern.compile("[a-z][a-z0-9_-]{0,63}");
  private static final Pattern KIND = Pattern.compile("[a-z][a-z0-9-]{0,31}");

  public AlarmKey {
    if (!isValid(subject, kind)) {
      throw new IllegalArgumentException(
          "'%s/%s' is no alarm; write subject and kind such as line/no-data"
              .formatted(subject, kind));
    }
  }

  /** Whether the two would make a key. */
  public static boolean isValid(String subject, String kind) {
    return SUBJECT.matcher(subject).matches() && KIND.matcher(kind).matches();
  }

  /** {@code subject/kind}, the name towards the outside. */
  public String text() {
    return subject + "/" + kind;
  }

  /**
   * Reads {@link #text()}.
   *
   * @throws IllegalArgumentException if it is no such text
   */
  public static AlarmKey parse(String text) {
    int slash = text.indexOf('/');
    return slash < 0
        ? new AlarmKey(text, "")
        : new AlarmKey(text.substring(0, slash), text.substring(slash + 1));
  }

  @Override
  public int compareTo(AlarmKey other) {
    return Comparator.comparing(AlarmKey::subject)
        .thenComparing(AlarmKey::kind)
        .compare(this, other);
  }

  @Override
  public String toString() {
    return text();
  }
}
