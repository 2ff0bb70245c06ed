package feedwitness.ledger;

import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * Something to be put on record.
 *
 * @param kind what sort of record, such as {@code note}: 1 to 32 of a-z, 0-9 and -, a letter first
 * @param subject what it is about, such as a measuring point; empty if nothing in particular; at
 *     most 64 characters
 * @param author who says so; empty for the service itself; at most 80 characters
 * @param fields what it says, names in the manner of {@code kind} with dots and _; at most {@link
 *     #LIMIT_CHARACTERS} together
 */
public record EvidenceDraft(
    String kind,
    String subject,
    String author,
    SortedMap<String, String> fields,
    Optional<Attachment> attachment) {
  /** All fields of a record together. */
  public static final int LIMIT_CHARACTERS = 64_000;

  private static final int SUBJECT_LIMIT = 64;
  private static final int AUTHOR_LIMIT = 80;
  private static final Pattern KIND = Pattern.compile("[a-z][a-z0-9-]{0,31}");
  private static final Pattern FIELD = Pattern.compile("[a-z][a-z0-9_.-]{0,63}");

  /**
   * Checks the shape of all parts.
   *
   * @throws IllegalArgumentException naming the part and its limit
   */
  public EvidenceDraft {
    require(KIND.matcher(kind).matches(), "kind '%s' is not 1 to 32 of a-z, 0-9 and -", kind);
    require(
        subject.length() <= SUBJECT_LIMIT, "subject '%s' is longer than 64 characters", subject);
    require(author.length() <= AUTHOR_LIMIT, "author '%s' is longer than 80 characters", author);
    int length = 0;
    for (Map.Entry<String, String> field : fields.entrySet()) {
      require(
          FIELD.matcher(field.getKey()).matches(), "'%s' is no name of a field", field.getKey());
      length += field.getKey().length() + field.getValue().length();
    }
    require(
        length <= LIMIT_CHARACTERS,
        "a record of %d characters is longer than " + LIMIT_CHARACTERS,
        length);
    fields = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(fields));
  }

  /** A record of the service itself without a picture. */
  public static EvidenceDraft of(String kind, String subject, Map<String, String> fields) {
    return new EvidenceDraft(kind, subject, "", new TreeMap<>(fields), Optional.empty());
  }

  /** The same, said by somebody. */
  public EvidenceDraft by(String who) {
    return new EvidenceDraft(kind, subject, who, fields, attachment);
  }

  private static void require(boolean holds, String words, Object value) {
    if (!holds) {
      throw new IllegalArgumentException(words.formatted(value));
    }
  }
}
