package feedwitness.settings;

import feedwitness.site.MailRoute;
import feedwitness.site.MessagePlan;
import feedwitness.site.QuietHours;
import feedwitness.site.Urgency;
import feedwitness.site.WebhookRoute;
import java.time.Duration;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Reads {@code [messages]}, {@code [mail]} and {@code [[webhook]]}. */
final class MessagesReader {
  static final Set<String> MESSAGES =
      Set.of(
          "quiet-from",
          "quiet-to",
          "quiet-lets-through",
          "group",
          "escalate-after",
          "daily",
          "give-up-after");
  static final String NEVER = "never";

  /** Each may hold a connection open at the same time. */
  static final int MOST_WEBHOOKS = 8;

  private static final Pattern TIME = Pattern.compile("([01]\\d|2[0-3]):[0-5]\\d");
  private static final Duration SHORTEST_GROUP = Duration.ofSeconds(1);
  private static final Duration LONGEST_GROUP = Duration.ofMinutes(15);
  private static final Duration SHORTEST_ANSWER = Duration.ofMinutes(1);
  private static final Duration LONGEST_ANSWER = Duration.ofDays(7);
  private static final Duration SHORTEST_TRYING = Duration.ofHours(1);
  private static final Duration LONGEST_TRYING = Duration.ofDays(14);

  private MessagesReader() {}

  /**
   * Reads how people are reached; a fault is noted and that part left out.
   *
   * @param notes gets what is amiss with files of secrets: no reason not to measure
   */
  static MessagePlan read(Section root, List<String> notes) {
    MessagePlan usual = MessagePlan.NONE;
    Optional<Section> messages = root.table("messages", MESSAGES);
    Optional<MailRoute> mail =
        root.table("mail", MailReader.KEYS).flatMap(section -> MailReader.read(section, notes));
    return new MessagePlan(
        mail,
        webhooks(root, notes),
        messages.flatMap(MessagesReader::quiet),
        messages
            .flatMap(m -> m.duration("group", SHORTEST_GROUP, LONGEST_GROUP))
            .orElse(usual.group()),
        messages.flatMap(MessagesReader::escalateAfter).orElse(usual.escalateAfter()),
        messages.flatMap(MessagesReader::daily).orElse(usual.dailyAt()),
        messages
            .flatMap(m -> m.duration("give-up-after", SHORTEST_TRYING, LONGEST_TRYING))
            .orElse(usual.giveUpAfter()));
  }

  private static List<WebhookRoute> webhooks(Section root, List<String> notes) {
    List<WebhookRoute> hooks = new ArrayList<>();
    Set<String> names = new HashSet<>(Set.of(MessagePlan.MAIL));
    List<Section> sections = root.tables("webhook", WebhookReader.KEYS);
    for (Section section : sections) {
      Optional<WebhookRoute> hook = WebhookReader.read(section, notes);
      if (hook.isPresent() && !names.add(hook.get().name())) {
        section.problem(
            "name",
            "name '%s' is taken by another channel".formatted(hook.get().name()),
            "give each webhook a name of its own, and none the name mail");
      }
      hook.ifPresent(hooks::add);
    }
    if (sections.size() > MOST_WEBHOOKS) {
      sections
          .get(MOST_WEBHOOKS)
          .problem(
              "name",
              "%d webhooks are more than %d".formatted(sections.size(), MOST_WEBHOOKS),
              "let one receiver pass messages on to the others");
    }
    return hooks;
  }

  private static Optional<QuietHours> quiet(Section messages) {
    if (!messages.has("quiet-from") && !messages.has("quiet-to")) {
      if (messages.has("quiet-lets-through")) {
        messages.problem(
            "quiet-lets-through",
            "there are no quiet hours it could go with",
            "write quiet-from and quiet-to as well, or leave it out");
      }
      return Optional.empty();
    }
    messages.missing("quiet-from", "for example quiet-from = \"21:00\"");
    messages.missing("quiet-to", "for example quiet-to = \"06:00\"");
    Optional<LocalTime> from = time(messages, "quiet-from");
    Optional<LocalTime> to = time(messages, "quiet-to");
    Optional<Urgency> through =
        messages.has("quiet-lets-through")
            ? messages.choice("quiet-lets-through", alarmPriorities())
            : Optional.of(Urgency.HIGH);
    if (from.isEmpty() || to.isEmpty() || through.isEmpty()) {
      return Optional.empty();
    }
    return messages.made("quiet-to", () -> new QuietHours(from.get(), to.get(), through.get()));
  }

  private static Optional<LocalTime> time(Section messages, String key) {
    return messages.parsed(
        key, MessagesReader::time, "write hours and minutes, from \"00:00\" to \"23:59\"");
  }

  private static LocalTime time(String text) {
    if (!TIME.matcher(text).matches()) {
      throw new IllegalArgumentException("'%s' is no time of day such as 06:30".formatted(text));
    }
    return LocalTime.parse(text);
  }

  private static Optional<Optional<LocalTime>> daily(Section messages) {
    return messages.parsed(
        "daily",
        text -> text.equals(NEVER) ? Optional.<LocalTime>empty() : Optional.of(time(text)),
        "for example daily = \"07:00\" or daily = \"never\"");
  }

  private static Optional<Optional<Duration>> escalateAfter(Section messages) {
    return messages.parsed(
        "escalate-after",
        text -> {
          if (text.equals(NEVER)) {
            return Optional.<Duration>empty();
          }
          Duration wait = DurationText.parse(text);
          if (wait.compareTo(SHORTEST_ANSWER) < 0 || wait.compareTo(LONGEST_ANSWER) > 0) {
            throw new IllegalArgumentException(
                "%s is outside %s to %s"
                    .formatted(
                        text, DurationText.of(SHORTEST_ANSWER), DurationText.of(LONGEST_ANSWER)));
          }
          return Optional.of(wait);
        },
        "for example escalate-after = \"30min\" or escalate-after = \"never\"");
  }

  /** From which priority on a channel tells; a note if nothing is said. */
  static Optional<Urgency> least(Section channel) {
    return channel.has("least") ? channel.choice("least", priorities()) : Optional.of(Urgency.NOTE);
  }

  private static Map<String, Urgency> priorities() {
    Map<String, Urgency> words = new LinkedHashMap<>();
    for (Urgency each : Urgency.values()) {
      words.put(each.name().toLowerCase(Locale.ROOT), each);
    }
    return words;
  }

  private static Map<String, Urgency> alarmPriorities() {
    Map<String, Urgency> words = priorities();
    words.remove("note");
    return words;
  }
}
