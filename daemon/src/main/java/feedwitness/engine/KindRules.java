package feedwitness.engine;

import feedwitness.alarm.AlarmKey;
import feedwitness.alarm.AlarmKind;
import feedwitness.alarm.Condition;
import feedwitness.alarm.Priority;
import feedwitness.site.AlarmRule;
import feedwitness.site.AlarmRule.Urgency;
import java.util.List;
import java.util.Optional;

/** Kinds of alarms as the configuration wants them. */
record KindRules(List<AlarmRule> rules) {
  KindRules {
    rules = List.copyOf(rules);
  }

  /** The kind at a subject; empty if the configuration turned it off there. */
  Optional<AlarmKind> of(AlarmKind usual, String subject) {
    AlarmKind kind = usual;
    boolean off = false;
    for (AlarmRule rule : rules) {
      if (applies(rule, usual.code(), subject)) {
        off = rule.urgency().map(Urgency.OFF::equals).orElse(off);
        kind =
            kind.with(
                rule.urgency()
                    .filter(urgency -> urgency != Urgency.OFF)
                    .map(urgency -> Priority.valueOf(urgency.name()))
                    .orElse(kind.priority()),
                rule.onDelay().orElse(kind.onDelay()),
                rule.offDelay().orElse(kind.offDelay()));
      }
    }
    return off ? Optional.empty() : Optional.of(kind);
  }

  /** The condition with its kind as configured; empty if turned off. */
  Optional<Condition> apply(Condition condition) {
    return of(condition.kind(), condition.subject())
        .map(
            kind ->
                new Condition(
                    condition.subject(),
                    kind,
                    condition.presence(),
                    condition.value(),
                    condition.limit(),
                    condition.unit(),
                    condition.words(),
                    condition.suppressed()));
  }

  /** Whether alarms of a key are turned off. */
  boolean off(AlarmKey key) {
    boolean off = false;
    for (AlarmRule rule : rules) {
      if (applies(rule, key.kind(), key.subject())) {
        off = rule.urgency().map(Urgency.OFF::equals).orElse(off);
      }
    }
    return off;
  }

  private static boolean applies(AlarmRule rule, String kind, String subject) {
    return rule.kind().equals(kind)
        && rule.point().map(point -> point.text().equals(subject)).orElse(true);
  }
}
