package feedwitness.store;

import static feedwitness.store.Nursery.LINE;
import static feedwitness.store.Nursery.MONDAY;
import static feedwitness.store.Nursery.TANK;
import static feedwitness.store.Nursery.measured;
import static feedwitness.store.Nursery.stamp;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.engine.Hindsight;
import feedwitness.ledger.Afterthought;
import feedwitness.ledger.Afterthoughts;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.ledger.History;
import feedwitness.ledger.QualifiedHistory;
import feedwitness.measurement.Measurement;
import feedwitness.quality.Flags;
import feedwitness.quality.Qualification;
import feedwitness.quality.QualityFlag;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is said later of earlier readings shows wherever they show, and changes none of them. */
class QualifiedHistoryTest {
  private static final int SAMPLES = 600;
  private static final Flags STUCK = Flags.of(QualityFlag.STUCK);

  @TempDir Path directory;

  /** Two points in turn, a sample each ten seconds; then the line is found to have been stuck. */
  private void record(H2Ledger ledger) {
    for (int i = 1; i <= SAMPLES; i++) {
      ledger.append(
          measured(
              i % 2 == 0 ? TANK : LINE,
              stamp(ledger.boot(), i, MONDAY.plusSeconds(10L * i)),
              1.5,
              20));
    }
    Instant when = MONDAY.plusSeconds(10L * SAMPLES);
    new Hindsight(ledger, ledger, new Afterthoughts(), () -> stamp(ledger.boot(), SAMPLES, when))
        .accept(new Qualification(LINE, ledger.boot(), 101, 199, STUCK, when));
    Nursery.sync(ledger);
  }

  private static List<Measurement> all(History history) {
    List<Measurement> found = new ArrayList<>();
    history.scan(LINE, MONDAY, MONDAY.plusSeconds(100_000), found::add);
    return found;
  }

  private static List<Long> stuck(History history) {
    return all(history).stream()
        .filter(m -> m.flags().has(QualityFlag.STUCK))
        .map(m -> m.stamp().sequence())
        .toList();
  }

  @Test
  void itShowsInEveryAnswerOfTheNextStart() throws Exception {
    try (H2Ledger ledger = Nursery.open(directory)) {
      record(ledger);
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(List.of(), stuck(ledger), "the readings themselves stay as they are");
      QualifiedHistory history = QualifiedHistory.of(ledger);
      List<Long> found = stuck(history);
      assertEquals(50, found.size());
      assertEquals(101, found.get(0));
      assertEquals(199, found.get(49));
      Measurement one = history.asOf(LINE, MONDAY.plusSeconds(1_500)).orElseThrow();
      assertTrue(one.flags().has(QualityFlag.STUCK), one::toString);
      assertTrue(
          history.saidLater(one).get(0).contains("same number"), history.saidLater(one)::toString);
      assertEquals(
          List.of(),
          history.saidLater(history.asOf(TANK, MONDAY.plusSeconds(1_500)).orElseThrow()));
    }
  }

  @Test
  void aThinnedCourseCarriesItWhereItTouches() throws Exception {
    try (H2Ledger ledger = Nursery.open(directory)) {
      record(ledger);
      History.Course course =
          QualifiedHistory.of(ledger).course(LINE, MONDAY, MONDAY.plusSeconds(10L * SAMPLES), 20);
      List<Instant> flagged =
          course.buckets().stream()
              .filter(bucket -> bucket.flags().has(QualityFlag.STUCK))
              .map(bucket -> bucket.start())
              .toList();
      assertEquals(Duration.ofMinutes(5), course.bucketWidth());
      assertEquals(MONDAY.plusSeconds(900), flagged.get(0));
      assertEquals(MONDAY.plusSeconds(1_800), flagged.get(flagged.size() - 1));
    }
  }

  @Test
  void itIsARecordOfItsOwnAndAStoppedServiceHasItToo() throws Exception {
    try (H2Ledger ledger = Nursery.open(directory)) {
      record(ledger);
      assertEquals(1, ledger.evidence(EvidenceQuery.newest(5, Afterthought.KIND)).size());
    }
    try (StoredHistory stored =
        assertInstanceOf(StoredHistory.Opening.Opened.class, StoredHistory.open(directory))
            .history()) {
      assertEquals(50, stuck(QualifiedHistory.of(stored)).size());
    }
  }
}
