package feedwitness.site;

import java.time.Duration;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;

/**
 * How people of this nursery are reached when they are elsewhere.
 *
 * @param quiet when only urgent messages are sent
 * @param group how long the first alarm waits for others that belong to it
 * @param escalateAfter how long an alarm may stay unacknowledged; empty for ever
 * @param dailyAt when the "still watching" note is sent, by the clock on the wall; empty for never
 * @param giveUpAfter how long a message that can't be delivered is tried
 */
public record MessagePlan(
    Optional<MailRoute> mail,
    List<WebhookRoute> webhooks,
    Optional<QuietHours> quiet,
    Duration group,
    Optional<Duration> escalateAfter,
    Optional<LocalTime> dailyAt,
    Duration giveUpAfter) {
  /** Reaches nobody. */
  public static final MessagePlan NONE =
      new MessagePlan(
          Optional.empty(),
          List.of(),
          Optional.empty(),
          Duration.ofSeconds(30),
          Optional.of(Duration.ofMinutes(30)),
          Optional.of(LocalTime.of(7, 0)),
          Duration.ofDays(2));

  /** Name of the mail channel beside those of webhooks. */
  public static final String MAIL = "mail";

  public MessagePlan {
    webhooks = List.copyOf(webhooks);
  }

  /** Whether there is anybody to reach. */
  public boolean isEmpty() {
    return mail.isEmpty() && webhooks.isEmpty();
  }
}
