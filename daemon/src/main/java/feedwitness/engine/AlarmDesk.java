package feedwitness.engine;

import feedwitness.alarm.AlarmEvent;
import feedwitness.alarm.AlarmKey;
import feedwitness.alarm.AlarmOutcome;
import feedwitness.alarm.Condition;
import feedwitness.alarm.Standing;
import feedwitness.ledger.Evidence;
import feedwitness.quantity.PointName;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;

/** Alarms, the journal and what is being fed, for whoever shows them. Safe for many threads. */
public interface AlarmDesk {

  /** Of this installation; made at the first start and kept on record. */
  UUID identity();

  /** All alarms that ever stood since they were configured, by key. */
  List<Standing> alarms();

  /** One of them. */
  Optional<Standing> alarm(AlarmKey key);

  /**
   * The door for whatever finds something out (drift, checks that are due): report a condition
   * whenever it is judged. Delays, priorities and whether it counts are seen to here.
   */
  void report(Condition condition);

  /** Somebody answers an alarm. */
  AlarmOutcome acknowledge(AlarmKey key, String who, String note);

  /** Takes an answer back. */
  AlarmOutcome reopen(AlarmKey key, String who);

  /** Sets an alarm aside for a while. */
  AlarmOutcome shelve(AlarmKey key, Duration howLong, String who, String note);

  /** Ends that early. */
  AlarmOutcome unshelve(AlarmKey key, String who);

  /** Takes an alarm out of service. */
  AlarmOutcome takeOut(AlarmKey key, String who, String note);

  /** Puts it back. */
  AlarmOutcome putBack(AlarmKey key, String who, String note);

  /**
   * Puts a note on record; waits until it is safe.
   *
   * @throws IOException in words for people, if it cannot be kept
   */
  Evidence note(JournalNote note) throws IOException;

  /** What runs where, for points that are fed. */
  List<FeedingStatus> feeding();

  /**
   * Somebody says what runs at a point; {@code strength} only for {@link Running.What#STRENGTH}.
   */
  FeedingStatus.Outcome feed(PointName point, Running.What what, String strength, String who);

  /**
   * Somebody says what a level is; {@code title} only for {@link FeedingStatus.Answer#STRENGTH}.
   */
  FeedingStatus.Outcome answer(
      PointName point, FeedingStatus.Answer answer, String title, String who);

  /** The limits that hold at a point now; empty for a point that is not there. */
  Optional<BandNow> band(PointName point);

  /** Strength of the water before feed at a point, mS/cm at 25 °C; NaN if it is not known. */
  double source(PointName point);

  /**
   * Calls {@code listener} for every event from now on, after {@link #alarms()} shows it, in their
   * order; it must return at once and never throw.
   */
  LiveView.Subscription subscribe(Consumer<AlarmEvent> listener);

  /** The same whenever what runs at a point, or the question about it, changed. */
  LiveView.Subscription subscribeFeeding(Consumer<PointName> listener);
}
