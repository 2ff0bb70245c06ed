package feedwitness.publish.message;

import feedwitness.site.Urgency;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Alarms nobody has acknowledged yet. Each is told again after a while, at most {@link #MOST}
 * times. Not for several threads.
 */
final class Watch {
  static final int MOST = 3;

  private final Optional<Duration> after;
  private final Map<String, Unanswered> open = new HashMap<>();

  /** An alarm, since when it waits by the steady clock, and how often it was told again. */
  private record Unanswered(Notice notice, Instant since, int told) {}

  Watch(Optional<Duration> after) {
    this.after = after;
  }

  /** Follows an alarm. */
  void follow(Notice notice, Now now) {
    switch (notice.change()) {
      case RAISED, REOPENED -> {
        if (notice.urgency().reaches(Urgency.LOW)) {
          open.put(notice.alarm(), new Unanswered(notice, now.steady(notice.at()), 0));
        }
      }
      case CLEARED, ACKNOWLEDGED -> open.remove(notice.alarm());
      case NOTED -> {
        // Nobody has to answer.
      }
    }
  }

  /** An alarm was told again, before a restart. */
  void told(String notice, int times) {
    open.replaceAll(
        (alarm, each) ->
            each.notice().id().equals(notice)
                ? new Unanswered(each.notice(), each.since(), Math.max(times, each.told()))
                : each);
  }

  /** Those to be told again now, each once, however much time has passed. */
  List<Item> due(Now now) {
    List<Item> due = new ArrayList<>();
    if (after.isEmpty()) {
      return due;
    }
    open.replaceAll(
        (alarm, each) -> {
          long waits = Duration.between(each.since(), now.steady()).dividedBy(after.get());
          int times = (int) Math.min(MOST, Math.max(0, waits));
          if (times <= each.told()) {
            return each;
          }
          due.add(Item.escalated(each.notice(), times));
          return new Unanswered(each.notice(), each.since(), times);
        });
    return due;
  }

  /** Whether an alarm still waits for an answer, so that telling it again makes sense. */
  boolean unanswered(Item item) {
    Unanswered waits = open.get(item.notice().alarm());
    return waits != null && waits.notice().id().equals(item.notice().id());
  }

  /** How many wait for an answer. */
  int size() {
    return open.size();
  }
}
