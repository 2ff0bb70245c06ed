package feedwitness.alarm;

import feedwitness.alarm.LifeCycle.Input;
import feedwitness.quantity.Stamp;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * All alarms and how they stand. Conditions of any kind come in through {@link #report}, people's
 * answers through the other methods; what happened comes back as events in their order. One thread
 * at a time.
 */
public final class AlarmBook {
  /** How long an answer can be taken back. */
  public static final Duration TAKE_BACK = Duration.ofMinutes(10);

  /** Longest shelving: longer means out of service. */
  public static final Duration LONGEST_SHELF = Duration.ofDays(7);

  /** More alarms are made by no nursery; a fault that made up subjects must not fill the memory. */
  private static final int MOST = 2000;

  private final Map<AlarmKey, Standing> standings = new TreeMap<>();
  private final Flood flood = new Flood();
  private final EventIds ids = new EventIds();

  /** With nothing in it. */
  public AlarmBook() {}

  AlarmBook(List<Standing> known) {
    known.forEach(standing -> standings.put(standing.key(), standing));
  }

  /** All that were ever reported active, by key. */
  public List<Standing> all() {
    return List.copyOf(standings.values());
  }

  /** One of them. */
  public Optional<Standing> find(AlarmKey key) {
    return Optional.ofNullable(standings.get(key));
  }

  /** Whether the condition behind an alarm stood when last settled; for deadbands. */
  public boolean active(AlarmKey key) {
    Standing standing = standings.get(key);
    return standing != null && standing.condition().presence() == Presence.ACTIVE;
  }

  /** Takes a condition in; also one that has not changed. */
  public List<AlarmEvent> report(Condition condition, Stamp now) {
    List<AlarmEvent> events = new ArrayList<>();
    take(condition, now, events);
    judgeFlood(now, events);
    return events;
  }

  private void take(Condition condition, Stamp now, List<AlarmEvent> events) {
    Standing before = standings.get(condition.key());
    if (before == null) {
      if (condition.presence() != Presence.ACTIVE || standings.size() >= MOST) {
        return;
      }
      before = Standing.fresh(condition, now);
    }
    Standing seen = before.seen(condition, now);
    if (before.counts() && !seen.counts() && seen.state() != State.NORMAL) {
      events.add(event(seen, Transition.SUPPRESSED, "", "", now, false));
    }
    settle(before.counts() ? seen : countAgain(seen, now, events), now, events);
  }

  /** Applies what the delays let through. */
  private void settle(Standing standing, Stamp now, List<AlarmEvent> events) {
    Presence presence = standing.condition().presence();
    AlarmKind kind = standing.kind();
    Standing settled = standing;
    if (presence == Presence.ACTIVE
        && !standing.state().active()
        && standing.heldNanos() >= kind.onDelay().toNanos()) {
      settled = step(standing, Input.PRESENT, now, events);
    } else if (presence == Presence.CLEAR
        && standing.state().active()
        && standing.heldNanos() >= kind.offDelay().toNanos()) {
      settled = step(standing, Input.ABSENT, now, events);
    }
    standings.put(settled.key(), settled);
  }

  /** For a standing that did not count: if it counts now and its condition is there, raise it. */
  private Standing countAgain(Standing standing, Stamp now, List<AlarmEvent> events) {
    boolean gone = standing.condition().presence() == Presence.CLEAR;
    return standing.counts() && !gone ? step(standing, Input.COUNT_AGAIN, now, events) : standing;
  }

  private Standing step(Standing standing, Input input, Stamp now, List<AlarmEvent> events) {
    LifeCycle.Step step =
        LifeCycle.step(
            standing.state(), input, standing.kind().priority().needsAnswer(), standing.counts());
    Standing moved = standing.moved(step, now);
    if (step.told().isPresent()) {
      Transition told = step.told().get();
      boolean asks =
          told == Transition.RAISED
              && standing.kind().priority().needsAnswer()
              && !standing.kind().code().equals(ServiceKinds.ALARM_FLOOD.code());
      events.add(event(moved, told, "", "", now, asks && flood.add(now)));
    }
    return moved;
  }

  /** Time goes by: delays run out, shelving ends. Call about once a second. */
  public List<AlarmEvent> tick(Stamp now) {
    List<AlarmEvent> events = new ArrayList<>();
    for (Standing standing : all()) {
      Standing next = standing;
      if (standing
          .shelf()
          .flatMap(Aside::until)
          .filter(end -> !now.wall().isBefore(end))
          .isPresent()) {
        next = standing.aside(Optional.empty(), standing.out());
        events.add(event(next, Transition.UNSHELVED, "", "", now, false));
        next = countAgain(next, now, events);
      }
      settle(next.seen(next.condition(), now), now, events);
    }
    judgeFlood(now, events);
    return events;
  }

  private void judgeFlood(Stamp now, List<AlarmEvent> events) {
    int count = flood.count(now);
    boolean there = count > Flood.MOST;
    AlarmKey key = new AlarmKey(AlarmKey.SERVICE, ServiceKinds.ALARM_FLOOD.code());
    if (there || active(key)) {
      take(ServiceKinds.flood(there, count), now, events);
    }
  }

  /** Forgets alarms whose subject or kind is no more; what stood is cleared first. */
  public List<AlarmEvent> forget(Predicate<AlarmKey> gone, Stamp now) {
    List<AlarmEvent> events = new ArrayList<>();
    for (Standing standing : all()) {
      if (gone.test(standing.key())) {
        step(standing, Input.ABSENT, now, events);
        standings.remove(standing.key());
      }
    }
    return events;
  }

  /** Somebody answers. */
  public AlarmOutcome acknowledge(AlarmKey key, String who, String note, Stamp now) {
    Standing standing = standings.get(key);
    if (standing == null) {
      return new AlarmOutcome.NoSuchAlarm(key);
    }
    LifeCycle.Step step =
        LifeCycle.step(standing.state(), Input.ACKNOWLEDGE, true, standing.counts());
    if (step.told().isEmpty()) {
      return new AlarmOutcome.Done(standing, List.of());
    }
    Reply reply = new Reply(who, note, now, standing.state());
    return done(
        standing.moved(step, now).with(Optional.of(reply)),
        Transition.ACKNOWLEDGED,
        who,
        note,
        now);
  }

  /** Takes an answer back, within {@link #TAKE_BACK}. */
  public AlarmOutcome reopen(AlarmKey key, String who, Stamp now) {
    Standing standing = standings.get(key);
    if (standing == null) {
      return new AlarmOutcome.NoSuchAlarm(key);
    }
    @Nullable Reply reply = standing.reply().orElse(null);
    if (reply == null || standing.state().waits()) {
      return new AlarmOutcome.Refused("alarm", key + " has no answer that could be taken back");
    }
    if (reply.at().boot() != now.boot()
        || now.monotonicNanos() - reply.at().monotonicNanos() > TAKE_BACK.toNanos()) {
      return new AlarmOutcome.Refused(
          "alarm",
          "the answer to %s is older than %d min and stays; write a note in the journal instead"
              .formatted(key, TAKE_BACK.toMinutes()));
    }
    State back = standing.state().active() ? State.UNACKNOWLEDGED : State.RETURNED;
    LifeCycle.Step step = new LifeCycle.Step(back, Optional.of(Transition.REOPENED));
    return done(
        standing.moved(step, now).with(Optional.empty()), Transition.REOPENED, who, "", now);
  }

  /** Sets an alarm aside until a time after now, at most {@link #LONGEST_SHELF} away. */
  public AlarmOutcome shelve(AlarmKey key, Instant until, String who, String note, Stamp now) {
    Standing standing = standings.get(key);
    if (standing == null) {
      return new AlarmOutcome.NoSuchAlarm(key);
    }
    Duration howLong = Duration.between(now.wall(), until);
    if (howLong.isNegative() || howLong.isZero() || howLong.compareTo(LONGEST_SHELF) > 0) {
      return new AlarmOutcome.Refused(
          "until",
          "shelving must end within %d days from now; take the alarm out of service if it is to rest longer"
              .formatted(LONGEST_SHELF.toDays()));
    }
    Aside shelf = new Aside(who, note, now, Optional.of(until));
    return done(
        answered(standing, who, note, now).aside(Optional.of(shelf), standing.out()),
        Transition.SHELVED,
        who,
        note,
        now);
  }

  /** Ends shelving early. */
  public AlarmOutcome unshelve(AlarmKey key, String who, Stamp now) {
    Standing standing = standings.get(key);
    if (standing == null) {
      return new AlarmOutcome.NoSuchAlarm(key);
    }
    return standing.shelf().isEmpty()
        ? new AlarmOutcome.Done(standing, List.of())
        : again(
            standing.aside(Optional.empty(), standing.out()), Transition.UNSHELVED, who, "", now);
  }

  /** Takes an alarm out of service until somebody puts it back. */
  public AlarmOutcome takeOut(AlarmKey key, String who, String note, Stamp now) {
    Standing standing = standings.get(key);
    if (standing == null) {
      return new AlarmOutcome.NoSuchAlarm(key);
    }
    if (standing.out().isPresent()) {
      return new AlarmOutcome.Done(standing, List.of());
    }
    Aside out = new Aside(who, note, now, Optional.empty());
    return done(
        answered(standing, who, note, now).aside(standing.shelf(), Optional.of(out)),
        Transition.OUT_OF_SERVICE,
        who,
        note,
        now);
  }

  /** Puts an alarm back into service. */
  public AlarmOutcome putBack(AlarmKey key, String who, String note, Stamp now) {
    Standing standing = standings.get(key);
    if (standing == null) {
      return new AlarmOutcome.NoSuchAlarm(key);
    }
    return standing.out().isEmpty()
        ? new AlarmOutcome.Done(standing, List.of())
        : again(
            standing.aside(standing.shelf(), Optional.empty()),
            Transition.IN_SERVICE,
            who,
            note,
            now);
  }

  /** Whoever sets an alarm aside has seen it. */
  private static Standing answered(Standing standing, String who, String note, Stamp now) {
    LifeCycle.Step step =
        LifeCycle.step(standing.state(), Input.ACKNOWLEDGE, true, standing.counts());
    return step.told().isEmpty()
        ? standing
        : standing.moved(step, now).with(Optional.of(new Reply(who, note, now, standing.state())));
  }

  private AlarmOutcome again(
      Standing standing, Transition told, String who, String note, Stamp now) {
    List<AlarmEvent> events = new ArrayList<>();
    events.add(event(standing, told, who, note, now, false));
    Standing next = countAgain(standing, now, events);
    standings.put(next.key(), next);
    return new AlarmOutcome.Done(next, events);
  }

  private AlarmOutcome done(Standing next, Transition told, String who, String note, Stamp now) {
    standings.put(next.key(), next);
    return new AlarmOutcome.Done(next, List.of(event(next, told, who, note, now, false)));
  }

  private AlarmEvent event(
      Standing standing, Transition told, String who, String note, Stamp now, boolean grouped) {
    Condition condition = standing.condition();
    AlarmKind kind = condition.kind();
    return new AlarmEvent(
        ids.next(now),
        condition.key(),
        kind.title(),
        kind.priority(),
        told,
        standing.state(),
        condition.value(),
        condition.limit(),
        condition.unit(),
        condition.words(),
        kind.consequence(),
        kind.remedy(),
        who,
        note,
        now,
        grouped);
  }

  /**
   * What a record says of an alarm that is younger than the kept state: the record counts.
   *
   * @param standing as the record gives it
   */
  public void restore(Standing standing) {
    standings.put(standing.key(), standing);
  }

  /** For {@link #parse}; everything but the progress of a flood. */
  public String toText() {
    return BookText.write(all());
  }

  /**
   * Reads {@link #toText()}.
   *
   * @throws IllegalArgumentException if the text was written by a newer program or is damaged
   */
  public static AlarmBook parse(String text) {
    return new AlarmBook(BookText.read(text));
  }
}
