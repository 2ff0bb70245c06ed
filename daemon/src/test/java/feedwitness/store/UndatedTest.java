package feedwitness.store;

import static feedwitness.store.Nursery.LINE;
import static feedwitness.store.Nursery.MONDAY;
import static feedwitness.store.Nursery.measured;
import static feedwitness.store.Nursery.scan;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.ledger.Bucket;
import feedwitness.ledger.History;
import feedwitness.measurement.Measurement;
import feedwitness.quality.QualityFlag;
import feedwitness.quantity.Stamp;
import feedwitness.sample.Missing;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A small board starts without a clock; the time service sets it some while later. */
class UndatedTest {
  private static final Instant POWERED_UP = Instant.parse("1970-01-01T00:00:40Z");
  private static final int STEP_SECONDS = 20;

  @TempDir Path directory;

  /**
   * Sample {@code i} of a boot that truly began on Monday, its clock set before sample {@code set}.
   */
  private static Measurement sample(int boot, int i, int set) {
    boolean dated = i >= set;
    Duration since = Duration.ofSeconds((long) STEP_SECONDS * i);
    Instant wall = (dated ? MONDAY : POWERED_UP).plus(since);
    Stamp stamp = new Stamp(boot, i, 5_000_000_000L + since.toNanos(), wall.toEpochMilli(), dated);
    return i % 100 == 7
        ? Nursery.missing(LINE, stamp, Missing.Cause.SILENT, "line: silent")
        : measured(LINE, stamp, 1 + i / 10_000.0, 20);
  }

  private static void assertDatedFromTheBeginning(H2Ledger ledger, int boot, int count, int set) {
    List<Measurement> all = scan(ledger, LINE);
    assertEquals(count, all.size());
    for (int i = 1; i <= count; i++) {
      Measurement m = all.get(i - 1);
      assertEquals(boot + "-" + i, m.stamp().id(), "in the order of arrival");
      assertEquals(MONDAY.plusSeconds((long) STEP_SECONDS * i), m.stamp().wall());
      assertTrue(m.stamp().dated());
      assertEquals(i < set, m.flags().has(QualityFlag.UNDATED), "what came undated stays marked");
    }
  }

  @Test
  void oneOffsetDatesAllOfABootOnceTheClockIsSet() {
    int set = 600;
    try (H2Ledger ledger = Nursery.open(directory)) {
      for (int i = 1; i < set; i++) {
        ledger.append(sample(1, i, set));
      }
      Nursery.sync(ledger);
      assertFalse(ledger.latest(LINE).orElseThrow().stamp().dated());
      assertEquals(POWERED_UP.plusSeconds(20), scan(ledger, LINE).get(0).stamp().wall());
      ledger.append(sample(1, set, set));
      assertDatedFromTheBeginning(ledger, 1, set, set);
      Nursery.sync(ledger);
      assertDatedFromTheBeginning(ledger, 1, set, set);
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertDatedFromTheBeginning(ledger, 1, set, set);
      assertEquals(MONDAY.plusSeconds(20L * set), ledger.newest().orElseThrow());
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(3, ledger.boot());
      assertDatedFromTheBeginning(ledger, 1, set, set);
    }
  }

  @Test
  void aBootThatNeverGotAClockStaysUndatedAndIsNotMixedWithTheNext() {
    try (H2Ledger ledger = Nursery.open(directory)) {
      for (int i = 1; i <= 50; i++) {
        ledger.append(sample(1, i, 1_000));
      }
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      for (int i = 1; i <= 50; i++) {
        ledger.append(sample(2, i, 10));
      }
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      List<Measurement> all = scan(ledger, LINE);
      assertEquals(100, all.size());
      assertTrue(all.subList(0, 50).stream().noneMatch(m -> m.stamp().dated()));
      assertTrue(all.subList(50, 100).stream().allMatch(m -> m.stamp().dated()));
      assertEquals(50, scan(ledger, LINE, MONDAY, MONDAY.plusSeconds(3_600)).size());
      assertEquals(50, scan(ledger, LINE, Instant.EPOCH, MONDAY).size());
    }
  }

  @Test
  void courseAndRangeSeeThemWhereTheyTrulyWere() {
    int set = 1_000;
    int count = 2_000;
    List<Measurement> truth = new ArrayList<>();
    try (H2Ledger ledger = Nursery.open(directory)) {
      for (int i = 1; i <= count; i++) {
        ledger.append(sample(1, i, set));
        truth.add(sample(1, i, 1));
      }
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      for (int maxBuckets : new int[] {5_000, 700, 60, 12, 3}) {
        History.Course course =
            ledger.course(LINE, Instant.EPOCH, MONDAY.plus(Duration.ofDays(2)), maxBuckets);
        long width = Math.max(1, course.bucketWidth().toMillis());
        for (Bucket bucket : course.buckets()) {
          long start = bucket.start().toEpochMilli();
          List<Measurement> inside =
              truth.stream()
                  .filter(m -> m.stamp().wallMillis() >= start)
                  .filter(m -> m.stamp().wallMillis() < start + width)
                  .toList();
          // roll-ups of later dated hours are placed to the minute, three samples
          assertEquals(
              inside.size(), bucket.readings() + bucket.missing(), width > 3_599_999 ? 6 : 0);
        }
        assertEquals(
            count, course.buckets().stream().mapToInt(b -> b.readings() + b.missing()).sum());
        assertTrue(course.buckets().get(0).flags().has(QualityFlag.UNDATED));
        assertFalse(course.buckets().get(course.buckets().size() - 1).start().isBefore(MONDAY));
      }
      Instant from = MONDAY.plus(Duration.ofHours(3));
      assertEquals(180, scan(ledger, LINE, from, from.plus(Duration.ofHours(1))).size());
      assertEquals(0, scan(ledger, LINE, Instant.EPOCH, MONDAY).size());
    }
  }

  @Test
  void theNightTheClocksChangeHasItsTrueNumberOfHoursAndALeapDayIsADay() {
    Instant change = Instant.parse("2028-03-25T00:00:00Z");
    Instant leap = Instant.parse("2028-02-28T00:00:00Z");
    try (H2Ledger ledger = Nursery.open(directory)) {
      long sequence = 0;
      for (Instant day : List.of(leap, change)) {
        for (int minute = 0; minute < 3 * 1_440; minute++) {
          sequence++;
          Instant wall = day.plusSeconds(60L * minute);
          Stamp stamp =
              new Stamp(1, sequence, wall.toEpochMilli() * 1_000_000, wall.toEpochMilli(), true);
          ledger.append(measured(LINE, stamp, 1.5, 20));
        }
      }
      for (Instant day : List.of(leap, change)) {
        History.Course course = ledger.course(LINE, day, day.plus(Duration.ofDays(3)), 72);
        assertEquals(72, course.buckets().size());
        assertTrue(course.buckets().stream().allMatch(b -> b.readings() == 60));
      }
    }
  }
}
