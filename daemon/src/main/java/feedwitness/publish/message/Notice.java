package feedwitness.publish.message;

import feedwitness.site.Urgency;
import java.time.Instant;

/**
 * Something people should be told.
 *
 * @param id names this event and no other: told once, however often it arrives. 1 to 100 characters
 *     without comma
 * @param alarm which alarm; its raising, acknowledgement and end share it. 1 to 100 characters
 * @param subject what it is about, for people, such as a measuring point; cut at 64 characters
 * @param change what became of it
 * @param title what is wrong: item, value, limit, unit; cut at 300 characters
 * @param remedy what to do; may be empty; cut at 300 characters
 * @param at when
 */
public record Notice(
    String id,
    String alarm,
    String subject,
    Urgency urgency,
    Change change,
    String title,
    String remedy,
    Instant at) {
  private static final int LONGEST_NAME = 100;
  private static final int LONGEST_SUBJECT = 64;
  private static final int LONGEST_TEXT = 300;

  /** What became of an alarm. */
  public enum Change {
    /** Told; told again until somebody acknowledges it. */
    RAISED,
    /** The acknowledgement was taken back: as if raised at that moment, but not told at once. */
    REOPENED,
    /** Back to normal: told, and no more is asked. */
    CLEARED,
    /** Somebody knows, or set it aside: not told, and no more is asked. */
    ACKNOWLEDGED,
    /** Needs no answer: told once. */
    NOTED;

    /** Whether people get a message of it. */
    public boolean told() {
      return this == RAISED || this == CLEARED || this == NOTED;
    }
  }

  public Notice {
    requireName(id);
    requireName(alarm);
    subject = Words.line(subject, LONGEST_SUBJECT);
    title = Words.line(title, LONGEST_TEXT);
    remedy = Words.line(remedy, LONGEST_TEXT);
  }

  private static void requireName(String name) {
    if (name.isBlank() || name.length() > LONGEST_NAME || name.contains(",")) {
      throw new IllegalArgumentException(
          "'%s' names no notice; give 1 to %d characters without comma"
              .formatted(name, LONGEST_NAME));
    }
  }
}
