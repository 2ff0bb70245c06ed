package feedwitness.publish.message;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import feedwitness.publish.message.Letter.Kind;
import feedwitness.site.Urgency;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;

/** Composes letters: text for people, JSON for programs, both with the same words. */
final class Letters {
  private final String nursery;
  private final LetterText text;
  private final Supplier<String> ids;

  /**
   * A composer.
   *
   * @param nursery name of the place
   * @param ids makes random UUIDs
   */
  Letters(String nursery, LetterText text, Supplier<String> ids) {
    this.nursery = Words.line(nursery, 80);
    this.text = text;
    this.ids = ids;
  }

  /** Of what has gathered; at least one. */
  Letter alarms(Channel channel, List<Item> items, int leftOut, Instant now) {
    boolean escalated = items.stream().anyMatch(item -> item.escalation() > 0);
    Urgency most =
        items.stream().map(Item::urgency).max(Comparator.naturalOrder()).orElse(Urgency.NOTE);
    Draft draft =
        new Draft(
            escalated ? Kind.ESCALATION : Kind.ALARMS,
            most,
            text.subject(items),
            text.alarms(items, leftOut, now),
            now);
    ArrayNode notices = JsonNodeFactory.instance.arrayNode();
    items.stream().limit(LetterText.MOST_ITEMS).map(Letters::json).forEach(notices::add);
    return finished(channel, draft, items, root -> root.set("notices", notices));
  }

  /** The "still watching" note about a day. */
  Letter daily(Channel channel, LocalDate day, List<DayFigures> figures, Instant now) {
    Draft draft =
        new Draft(
            Kind.DAILY,
            Urgency.NOTE,
            text.dailySubject(day, figures),
            text.daily(day, figures),
            now);
    ArrayNode points = JsonNodeFactory.instance.arrayNode();
    figures.stream().map(Letters::json).forEach(points::add);
    return finished(
        channel, draft, List.of(), root -> root.put("day", day.toString()).set("points", points));
  }

  /** What the test button sends. */
  Letter test(Channel channel, Instant now) {
    return finished(
        channel,
        new Draft(Kind.TEST, Urgency.NOTE, text.testSubject(), text.test(now), now),
        List.of(),
        root -> {});
  }

  private record Draft(Kind kind, Urgency urgency, String subject, String words, Instant now) {}

  @FunctionalInterface
  private interface More {
    void put(ObjectNode root);
  }

  private Letter finished(Channel channel, Draft draft, List<Item> items, More more) {
    String id = ids.get();
    String body = draft.words();
    if (channel.json()) {
      ObjectNode root = JsonNodeFactory.instance.objectNode();
      root.put("id", id);
      root.put("kind", code(draft.kind()));
      root.put("nursery", nursery);
      root.put("priority", code(draft.urgency()));
      root.put("made", draft.now().toString());
      root.put("subject", draft.subject());
      root.put("text", draft.words());
      more.put(root);
      body = root.toString();
    }
    return new Letter(
        id,
        channel.name(),
        draft.kind(),
        draft.urgency(),
        draft.subject(),
        body,
        draft.now(),
        items);
  }

  private static ObjectNode json(Item item) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("id", item.notice().id());
    node.put("alarm", item.notice().alarm());
    node.put("subject", item.notice().subject());
    node.put("priority", code(item.urgency()));
    node.put("change", code(item.notice().change()));
    node.put("title", item.notice().title());
    node.put("what_to_do", item.notice().remedy());
    node.put("at", item.notice().at().toString());
    node.put("unanswered", item.escalation());
    return node;
  }

  private static ObjectNode json(DayFigures day) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("point", day.name());
    node.put("mean_mS_cm", number(day.mean()));
    node.put("low_mS_cm", number(day.low()));
    node.put("high_mS_cm", number(day.high()));
    node.put("readings", day.readings());
    node.put("gaps", day.gaps());
    node.put("silent_s", day.silent().toSeconds());
    node.put("alarms", day.alarms());
    return node;
  }

  private static @org.jspecify.annotations.Nullable BigDecimal number(double value) {
    return Double.isFinite(value)
        ? BigDecimal.valueOf(value).setScale(4, RoundingMode.HALF_EVEN)
        : null;
  }

  static String code(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
