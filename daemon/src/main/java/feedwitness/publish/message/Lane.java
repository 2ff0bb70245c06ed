package feedwitness.publish.message;

import feedwitness.site.QuietHours;
import feedwitness.site.Urgency;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * What one channel has to tell: notices that gather, and letters composed of them that were not
 * delivered yet. While a letter can't be delivered all else gathers behind it, so that an outage of
 * a day ends in two messages, not in two hundred. Pure; not for several threads.
 */
final class Lane {
  /** More than people could read; beyond it the oldest are left out and counted. */
  static final int MOST_WAITING = 1000;

  private final String name;
  private final Urgency least;
  private final ZoneId zone;
  private final Optional<QuietHours> quiet;
  private final Gathering gathering;
  private final BackOff backOff;
  private final List<Item> waiting = new ArrayList<>();
  private final List<Open> open = new ArrayList<>();
  private Instant gathered = Instant.MIN;
  private Instant notBefore = Instant.MIN;
  private int failures;
  private int leftOut;
  private @Nullable Letter underWay;
  private MessageDesk.@Nullable Last last;

  /** A letter and since when, by the steady clock, it waits. */
  private record Open(Letter letter, Instant since) {}

  Lane(Channel channel, ZoneId zone, Optional<QuietHours> quiet, Duration group, BackOff backOff) {
    this.name = channel.name();
    this.least = channel.least();
    this.zone = zone;
    this.quiet = quiet;
    this.gathering = new Gathering(group);
    this.backOff = backOff;
  }

  String name() {
    return name;
  }

  boolean tells(Urgency urgency) {
    return urgency.reaches(least);
  }

  /** Something to tell. */
  void take(Item item, Now now) {
    if (!tells(item.urgency())) {
      return;
    }
    if (waiting.isEmpty()) {
      gathered = gathering.until(now.steady());
    }
    if (waiting.size() == MOST_WAITING) {
      waiting.remove(0);
      leftOut++;
    }
    waiting.add(item);
  }

  /** What was composed before a restart. */
  void composed(Letter letter, List<String> items, Now now) {
    waiting.removeIf(item -> items.contains(item.key()));
    add(letter, now);
  }

  /** A letter to deliver. */
  void add(Letter letter, Now now) {
    open.add(new Open(letter, now.steady(letter.made())));
  }

  /** No more is to be done for a letter. */
  void settled(String letter) {
    open.removeIf(each -> each.letter().id().equals(letter));
  }

  /**
   * What should be composed to a letter now; empty for nothing. It is taken out of what waits.
   *
   * @param worthTelling whether an item should still be told
   */
  List<Item> gather(Now now, Predicate<Item> worthTelling) {
    waiting.removeIf(item -> !worthTelling.test(item));
    boolean blocked = open.stream().anyMatch(each -> !held(each.letter().urgency(), now));
    boolean urgent = waiting.stream().anyMatch(item -> !held(item.urgency(), now));
    if (blocked || !urgent || now.steady().isBefore(gathered)) {
      return List.of();
    }
    List<Item> all = List.copyOf(waiting);
    waiting.clear();
    gathering.closed(now.steady());
    return all;
  }

  /** How many notices were left out since last asked. */
  int leftOut() {
    int count = leftOut;
    leftOut = 0;
    return count;
  }

  /** The letter to try now; it is under way until {@link #came}. */
  Optional<Letter> next(Now now) {
    if (underWay != null || now.steady().isBefore(notBefore)) {
      return Optional.empty();
    }
    Optional<Letter> next =
        open.stream().map(Open::letter).filter(letter -> !held(letter.urgency(), now)).findFirst();
    underWay = next.orElse(null);
    return next;
  }

  /** An attempt ended. True if the letter is settled. */
  boolean came(Letter letter, Delivery delivery, Now now) {
    underWay = null;
    last =
        new MessageDesk.Last(now.wall(), delivery instanceof Delivery.Delivered, delivery.said());
    if (delivery instanceof Delivery.Later || delivery instanceof Delivery.Misconfigured) {
      failures++;
      notBefore =
          now.steady()
              .plus(
                  delivery instanceof Delivery.Later ? backOff.after(failures) : backOff.longest());
      return false;
    }
    failures = 0;
    notBefore = Instant.MIN;
    settled(letter.id());
    return true;
  }

  /** A test ended: it says how the channel is, and if it is well, others need not wait. */
  void tested(Delivery delivery, Now now) {
    last =
        new MessageDesk.Last(now.wall(), delivery instanceof Delivery.Delivered, delivery.said());
    if (delivery instanceof Delivery.Delivered) {
      failures = 0;
      notBefore = Instant.MIN;
    }
  }

  /** Letters that have waited too long and are not under way, taken out. */
  List<Letter> olderThan(Duration longest, Now now) {
    Instant limit = now.steady().minus(longest);
    List<Open> old =
        open.stream()
            .filter(each -> each.since().isBefore(limit) && !each.letter().equals(underWay))
            .toList();
    open.removeAll(old);
    return old.stream().map(Open::letter).toList();
  }

  private boolean held(Urgency urgency, Now now) {
    return now.dated() && quiet.isPresent() && quiet.get().holds(urgency, now.wall(), zone);
  }

  int waiting() {
    return waiting.size();
  }

  int open() {
    return open.size();
  }

  int failures() {
    return failures;
  }

  /** When the next attempt will be, by the clock on the wall; empty if none waits. */
  Optional<Instant> nextAttempt(Now now) {
    return open.isEmpty() || !notBefore.isAfter(now.steady())
        ? Optional.empty()
        : Optional.of(now.wall(notBefore));
  }

  Optional<MessageDesk.Last> last() {
    return Optional.ofNullable(last);
  }
}
