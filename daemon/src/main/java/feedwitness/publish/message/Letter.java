package feedwitness.publish.message;

import feedwitness.site.Urgency;
import java.time.Instant;
import java.util.List;

/**
 * A message for one channel as it is sent, word for word the same at each attempt.
 *
 * @param id a random UUID; receivers know a repeat by it
 * @param channel that delivers it
 * @param subject one line
 * @param body text of a mail, JSON of a webhook
 * @param made when it was composed
 * @param items what is told in it
 */
record Letter(
    String id,
    String channel,
    Kind kind,
    Urgency urgency,
    String subject,
    String body,
    Instant made,
    List<Item> items) {
  Letter {
    items = List.copyOf(items);
  }

  /** What sort of message it is. */
  enum Kind {
    ALARMS,
    ESCALATION,
    DAILY,
    TEST
  }
}
