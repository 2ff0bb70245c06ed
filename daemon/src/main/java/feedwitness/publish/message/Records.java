package feedwitness.publish.message;

import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.publish.message.Letter.Kind;
import feedwitness.site.Urgency;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * How things stand in the ledger: {@code message-notice} is to be told, {@code message} was
 * composed for a channel, {@code message-outcome} says what became of that. Texts as people got
 * them; addresses and secrets are not among them.
 */
final class Records {
  static final String NOTICE = "message-notice";
  static final String MESSAGE = "message";
  static final String OUTCOME = "message-outcome";

  /** The letter was taken on by the receiver. */
  static final String DELIVERED = "delivered";

  /** The letter is not tried again. */
  static final String GIVEN_UP = "given-up";

  private static final int LONGEST_BODY = 50_000;

  private Records() {}

  /**
   * A notice.
   *
   * @param channels that will tell it
   */
  static EvidenceDraft notice(Notice notice, List<String> channels) {
    return EvidenceDraft.of(
        NOTICE,
        notice.subject(),
        Map.of(
            "id", notice.id(),
            "alarm", notice.alarm(),
            "priority", notice.urgency().name(),
            "change", notice.change().name(),
            "title", notice.title(),
            "remedy", notice.remedy(),
            "at", notice.at().toString(),
            "channels", String.join(",", channels)));
  }

  static Notice notice(Evidence record) {
    return new Notice(
        record.field("id"),
        record.field("alarm"),
        record.subject(),
        Urgency.valueOf(record.field("priority")),
        Notice.Change.valueOf(record.field("change")),
        record.field("title"),
        record.field("remedy"),
        Instant.parse(record.field("at")));
  }

  static List<String> channels(Evidence record) {
    return split(record.field("channels"));
  }

  static EvidenceDraft message(Letter letter) {
    return EvidenceDraft.of(
        MESSAGE,
        letter.channel(),
        Map.of(
            "id", letter.id(),
            "sort", letter.kind().name(),
            "priority", letter.urgency().name(),
            "title", letter.subject(),
            "body", letter.body(),
            "made", letter.made().toString(),
            "items", letter.items().stream().map(Item::key).collect(Collectors.joining(","))));
  }

  /** The letter as it was, but for the items: only their keys are known. */
  static Letter letter(Evidence record) {
    return new Letter(
        record.field("id"),
        record.subject(),
        Kind.valueOf(record.field("sort")),
        Urgency.valueOf(record.field("priority")),
        record.field("title"),
        record.field("body"),
        Instant.parse(record.field("made")),
        List.of());
  }

  static List<String> items(Evidence record) {
    return split(record.field("items"));
  }

  static EvidenceDraft outcome(Letter letter, String result, String said, int attempts) {
    return EvidenceDraft.of(
        OUTCOME,
        letter.channel(),
        Map.of(
            "message", letter.id(),
            "result", result,
            "said", Words.line(said, 300),
            "attempts", Integer.toString(attempts)));
  }

  /** A body that fits into a record. */
  static String fitting(String body) {
    return body.length() <= LONGEST_BODY ? body : body.substring(0, LONGEST_BODY);
  }

  private static List<String> split(String list) {
    return list.isEmpty() ? List.of() : List.of(list.split(",", -1));
  }
}
