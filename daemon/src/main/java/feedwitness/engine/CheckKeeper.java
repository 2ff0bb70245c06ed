package feedwitness.engine;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.check.CheckDesk;
import feedwitness.check.CheckEvidence;
import feedwitness.check.CheckSubject;
import feedwitness.check.ComparisonMade;
import feedwitness.check.CurveAdjusted;
import feedwitness.check.ProbeOutOfPlace;
import feedwitness.check.ProbeReplaced;
import feedwitness.check.RangeQualified;
import feedwitness.check.When;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;

/**
 * Facts of checks on their way to the record: recorded first, then counted. What cannot be recorded
 * is taken back, and who is at the probe is told. Guarded by its owner; only the writer's word
 * comes in from outside.
 */
final class CheckKeeper {
  /** After a refusal nothing that happens by itself is tried again before. */
  private static final long PAUSE_NANOS = 30_000_000_000L;

  private static final long LATE_NANOS = 10_000_000_000L;

  /** What is seen once and cannot be made again out of the records; about 1 kB each. */
  private static final int MOST_OWED = 500;

  private final CheckRecords records;
  private final CheckDesk desk;
  private final BiConsumer<PointName, CalibrationCurve> calibrate;
  private final Queue<Word> words = new ConcurrentLinkedQueue<>();
  private final Map<CheckSubject, Going> going = new HashMap<>();
  private final Map<CheckSubject, String> troubles = new HashMap<>();
  private final List<CheckEvidence> owed = new ArrayList<>();
  private boolean refused;
  private long refusedNanos;

  /** What the writer says of a fact. */
  private record Word(CheckEvidence fact, @Nullable Throwable failure) {}

  /** The last that was handed over of a subject. */
  private record Going(CompletableFuture<Void> kept, long sinceNanos) {}

  /** {@code calibrate}: puts a curve in use once it is on record. */
  CheckKeeper(
      CheckRecords records, CheckDesk desk, BiConsumer<PointName, CalibrationCurve> calibrate) {
    this.records = records;
    this.desk = desk;
    this.calibrate = calibrate;
  }

  /** Hands facts over in the order in which things happened. */
  CompletableFuture<Void> keep(List<CheckEvidence> facts, Stamp at) {
    if (facts.isEmpty()) {
      return CompletableFuture.completedFuture(null);
    }
    desk.onItsWay(facts);
    CompletableFuture<Void> all = hand(facts, at);
    for (CheckEvidence fact : facts) {
      going.put(fact.subject(), new Going(all, at.monotonicNanos()));
    }
    return all;
  }

  private CompletableFuture<Void> hand(List<CheckEvidence> facts, Stamp at) {
    return CompletableFuture.allOf(
        facts.stream()
            .map(
                fact ->
                    records
                        .keep(at, fact)
                        .whenComplete((done, failure) -> words.add(new Word(fact, failure))))
            .toArray(CompletableFuture<?>[]::new));
  }

  /** What was last handed over of a subject; a failure of that is told already. */
  CompletableFuture<Void> last(CheckSubject subject) {
    Going last = going.get(subject);
    return last == null
        ? CompletableFuture.completedFuture(null)
        : last.kept.exceptionally(failure -> null);
  }

  /** Counts what is on record by now and takes back what could not be; whether there was any. */
  boolean listen(When now) {
    List<CheckEvidence> kept = new ArrayList<>();
    List<CheckEvidence> lost = new ArrayList<>();
    for (Word word = words.poll(); word != null; word = words.poll()) {
      if (word.failure == null) {
        kept.add(word.fact);
        troubles.remove(word.fact.subject());
      } else {
        lost.add(word.fact);
        troubles.put(word.fact.subject(), CheckRecords.notDone(word.failure));
      }
    }
    going.values().removeIf(one -> one.kept.isDone());
    desk.kept(kept);
    kept.forEach(this::use);
    if (!lost.isEmpty()) {
      refused = true;
      refusedNanos = now.monotonicNanos();
      desk.notKept(lost, now);
      owe(lost);
    }
    return !kept.isEmpty() || !lost.isEmpty();
  }

  private void use(CheckEvidence fact) {
    boolean curve = fact instanceof CurveAdjusted || fact instanceof ProbeReplaced;
    if (curve && fact.subject().kind() == CheckSubject.Kind.PROBE) {
      calibrate.accept(fact.subject().name(), desk.history(fact.subject()).curve());
    }
  }

  private void owe(List<CheckEvidence> lost) {
    for (CheckEvidence fact : lost) {
      boolean seenOnce =
          fact instanceof ProbeOutOfPlace
              || (fact instanceof RangeQualified range && isClosed(range))
              || (fact instanceof ComparisonMade one
                  && one.type() == ComparisonMade.Type.PLAIN_WATER);
      if (seenOnce && owed.size() < MOST_OWED) {
        owed.add(fact);
      }
    }
  }

  /** Otherwise it follows again when the check is closed again. */
  private boolean isClosed(RangeQualified range) {
    return desk.history(range.subject()).checks().stream()
        .filter(check -> check.started().entry().check().equals(range.entry().check()))
        .anyMatch(check -> check.closed().isPresent());
  }

  /** Whether what happens by itself has to wait: the disk refused a moment ago. */
  boolean waits(When now) {
    refused &= now.monotonicNanos() - refusedNanos < PAUSE_NANOS;
    return refused;
  }

  /** What is still to be recorded, to be tried again; the desk takes it as new. */
  List<CheckEvidence> owed() {
    List<CheckEvidence> all = List.copyOf(owed);
    owed.clear();
    return all;
  }

  /** Why what was done last at a probe does not count, or not yet. */
  Optional<String> trouble(CheckSubject subject, When now) {
    Going last = going.get(subject);
    return last != null
            && !last.kept.isDone()
            && now.monotonicNanos() - last.sinceNanos > LATE_NANOS
        ? Optional.of(CheckRecords.NOT_YET)
        : Optional.ofNullable(troubles.get(subject));
  }
}
