package feedwitness.publish.message;

import feedwitness.ledger.Evidence;
import feedwitness.publish.message.Letter.Kind;
import feedwitness.site.MessagePlan;
import feedwitness.site.Urgency;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/**
 * Decides what is told to whom and when; delivers nothing itself. Everything it knows can be built
 * anew from the records. Not for several threads.
 */
final class Post {
  /** Notices known by id, so that none is told twice. */
  static final int REMEMBERED = 20_000;

  private final MessagePlan plan;
  private final ZoneId zone;
  private final Letters letters;
  private final Map<String, Channel> channels = new LinkedHashMap<>();
  private final Map<String, Lane> lanes = new LinkedHashMap<>();
  private final Watch watch;
  private final Set<String> seen =
      Collections.newSetFromMap(
          new LinkedHashMap<>() {
            @Override
            protected boolean removeEldestEntry(Map.Entry<String, Boolean> eldest) {
              return size() > REMEMBERED;
            }
          });
  private @Nullable LocalDate lastDaily;

  Post(
      MessagePlan plan,
      ZoneId zone,
      Letters letters,
      List<Channel> channels,
      RandomGenerator random) {
    this.plan = plan;
    this.zone = zone;
    this.letters = letters;
    this.watch = new Watch(plan.escalateAfter());
    for (Channel each : channels) {
      this.channels.put(each.name(), each);
      lanes.put(each.name(), new Lane(each, zone, plan.quiet(), plan.group(), new BackOff(random)));
    }
  }

  /**
   * Goes on where the records end.
   *
   * @param records oldest first
   */
  void restore(List<Evidence> records, Now now) {
    Map<String, Notice> notices = new HashMap<>();
    for (Evidence record : records) {
      switch (record.kind()) {
        case Records.NOTICE -> restoreNotice(record, notices, now);
        case Records.MESSAGE -> restoreMessage(record, now);
        case Records.OUTCOME ->
            lane(record.subject()).ifPresent(lane -> lane.settled(record.field("message")));
        default -> throw new IllegalArgumentException("not asked for: " + record.kind());
      }
    }
  }

  private void restoreNotice(Evidence record, Map<String, Notice> notices, Now now) {
    Notice notice = Records.notice(record);
    notices.put(notice.id(), notice);
    seen.add(notice.id());
    watch.follow(notice, now);
    if (notice.change().told()) {
      for (String channel : Records.channels(record)) {
        lane(channel).ifPresent(lane -> lane.take(Item.of(notice), now));
      }
    }
  }

  private void restoreMessage(Evidence record, Now now) {
    Letter letter = Records.letter(record);
    List<String> items = Records.items(record);
    items.forEach(key -> watch.told(Item.notice(key), Item.escalation(key)));
    if (letter.kind() == Kind.DAILY) {
      lastDaily = LocalDate.ofInstant(letter.made(), zone);
    }
    if (letter.kind() != Kind.TEST) {
      lane(letter.channel()).ifPresent(lane -> lane.composed(letter, items, now));
    }
  }

  private Optional<Lane> lane(String name) {
    return Optional.ofNullable(lanes.get(name));
  }

  /** Takes a notice in. False if it is known already. */
  boolean arrived(Notice notice, Now now) {
    if (!seen.add(notice.id())) {
      return false;
    }
    watch.follow(notice, now);
    if (notice.change().told()) {
      lanes.values().forEach(lane -> lane.take(Item.of(notice), now));
    }
    return true;
  }

  /** Channels that tell notices of that urgency. */
  List<String> tellers(Urgency urgency) {
    return lanes.values().stream().filter(lane -> lane.tells(urgency)).map(Lane::name).toList();
  }

  /** Letters that became due: to be put on record, then tried. */
  List<Letter> compose(Now now) {
    for (Item item : watch.due(now)) {
      lanes.values().forEach(lane -> lane.take(item, now));
    }
    List<Letter> made = new ArrayList<>();
    for (Lane lane : lanes.values()) {
      List<Item> items = lane.gather(now, item -> item.escalation() == 0 || watch.unanswered(item));
      if (!items.isEmpty()) {
        Letter letter = letters.alarms(channel(lane), items, lane.leftOut(), now.wall());
        lane.add(letter, now);
        made.add(letter);
      }
    }
    return made;
  }

  /** The day the "still watching" note is due about; empty if it is not due. */
  Optional<LocalDate> dailyDue(Now now) {
    if (!now.dated() || plan.dailyAt().isEmpty() || lanes.isEmpty()) {
      return Optional.empty();
    }
    LocalDateTime local = LocalDateTime.ofInstant(now.wall(), zone);
    boolean reached = !local.toLocalTime().isBefore(plan.dailyAt().get());
    LocalDate latest = reached ? local.toLocalDate() : local.toLocalDate().minusDays(1);
    if (lastDaily == null) {
      // The first start: there is no day to tell of yet.
      lastDaily = latest;
    }
    return latest.isAfter(lastDaily) ? Optional.of(latest.minusDays(1)) : Optional.empty();
  }

  /** The note about a day, for each channel that tells notes. */
  List<Letter> daily(LocalDate day, List<DayFigures> figures, Now now) {
    lastDaily = day.plusDays(1);
    List<Letter> made = new ArrayList<>();
    for (Lane lane : lanes.values()) {
      if (lane.tells(Urgency.NOTE)) {
        Letter letter = letters.daily(channel(lane), day, figures, now.wall());
        lane.add(letter, now);
        made.add(letter);
      }
    }
    return made;
  }

  /** What the test button sends over a channel. */
  Letter test(Channel channel, Instant now) {
    return letters.test(channel, now);
  }

  private Channel channel(Lane lane) {
    return java.util.Objects.requireNonNull(channels.get(lane.name()));
  }

  List<Lane> lanes() {
    return List.copyOf(lanes.values());
  }

  int unanswered() {
    return watch.size();
  }
}
