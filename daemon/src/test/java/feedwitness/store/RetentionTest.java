package feedwitness.store;

import static feedwitness.store.Nursery.LINE;
import static feedwitness.store.Nursery.MONDAY;
import static feedwitness.store.Nursery.TANK;
import static feedwitness.store.Nursery.measured;
import static feedwitness.store.Nursery.scan;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.ledger.Bucket;
import feedwitness.ledger.History;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TimeSource;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Single samples go after ten days, roll-ups stay. */
class RetentionTest {
  private static final Duration KEEP = Duration.ofDays(10);
  private static final int STEP_SECONDS = 60;
  private static final int DAY = 86_400 / STEP_SECONDS;

  @TempDir Path directory;

  private final AtomicLong nanos = new AtomicLong(1);
  private volatile Instant wall = MONDAY;
  private final TimeSource time =
      new TimeSource() {
        @Override
        public long monotonicNanos() {
          return nanos.get();
        }

        @Override
        public Instant wall() {
          return wall;
        }
      };

  private H2Ledger open() {
    StoreSettings settings =
        new StoreSettings(directory, Duration.ofSeconds(60), 100_000, 0, Optional.of(KEEP));
    return ((LedgerOpening.Opened) H2Ledger.open(settings, time)).ledger();
  }

  private void pass(Duration span) {
    nanos.addAndGet(span.toNanos());
    wall = wall.plus(span);
  }

  /** A day of two points, then a sync. */
  private void record(H2Ledger ledger, int day) {
    for (int i = 0; i < DAY; i++) {
      pass(Duration.ofSeconds(STEP_SECONDS));
      int at = day * DAY + i;
      for (PointName point : List.of(LINE, TANK)) {
        long sequence = 2L * at + (point.equals(LINE) ? 1 : 2);
        Stamp stamp = new Stamp(ledger.boot(), sequence, nanos.get(), wall.toEpochMilli(), true);
        ledger.append(measured(point, stamp, 1.5 + (at % 100) / 100.0, 20));
      }
    }
    Nursery.sync(ledger);
  }

  private void letSmallStepsBeTaken(H2Ledger ledger) {
    for (int i = 0; i < 60; i++) {
      pass(Duration.ofMinutes(2));
      Nursery.sync(ledger);
    }
  }

  private List<Bucket> everything(H2Ledger ledger, int buckets) {
    History.Course course = ledger.course(LINE, MONDAY, MONDAY.plus(Duration.ofDays(60)), buckets);
    return course.buckets();
  }

  @Test
  void samplesGoInSmallStepsAndTheCourseStays() throws Exception {
    int days = 24;
    try (H2Ledger ledger = open()) {
      for (int day = 0; day < days; day++) {
        record(ledger, day);
      }
      letSmallStepsBeTaken(ledger);
      List<Measurement> left = scan(ledger, LINE);
      Instant oldest = left.get(0).stamp().wall();
      assertTrue(!oldest.isBefore(wall.minus(KEEP).minus(Duration.ofHours(1))));
      assertTrue(oldest.isBefore(wall.minus(KEEP).plus(Duration.ofHours(2))));
      for (int buckets : new int[] {5_000, 600, 100, 10}) {
        List<Bucket> course = everything(ledger, buckets);
        assertTrue(course.size() <= buckets);
        assertEquals(days * DAY, course.stream().mapToInt(Bucket::readings).sum(), "of the course");
      }
      // edges within an hour that only has its minutes left
      Instant from = MONDAY.plus(Duration.ofMinutes(90));
      History.Course piece = ledger.course(LINE, from, from.plus(Duration.ofMinutes(20)), 1_000);
      assertEquals(20, piece.buckets().stream().mapToInt(Bucket::readings).sum());
      List<Long> retired = new ArrayList<>();
      ledger.retired(LINE, from, from.plus(Duration.ofMinutes(20)), retired::add);
      assertEquals(20, retired.size(), "an import can find them by their minutes");
      List<Long> kept = new ArrayList<>();
      ledger.retired(LINE, wall.minus(KEEP).plus(Duration.ofHours(2)), wall, kept::add);
      assertEquals(List.of(), kept);
      assertEquals(Optional.empty(), ledger.trouble());
    }
    long octets = Files.size(new H2File(directory).path());
    try (H2Ledger ledger = open()) {
      for (int day = 0; day < days; day++) {
        record(ledger, day);
      }
      letSmallStepsBeTaken(ledger);
    }
    long later = Files.size(new H2File(directory).path());
    // roll-ups of twice as many days, samples of as many as before
    assertTrue(later < 2.6 * octets, "%d grew to %d octets".formatted(octets, later));
    try (FileLook look = new FileLook(directory)) {
      assertTrue(look.count("chunk") < 48 * (KEEP.toDays() + 3), "samples of ten days");
      assertTrue(look.count("rollup_minute") > 48L * (2 * days - 1), "minutes of all days");
    }
  }

  @Test
  void aClockThatJumpsToNextYearCostsNothing() {
    try (H2Ledger ledger = open()) {
      record(ledger, 0);
      wall = wall.plus(Duration.ofDays(365));
      for (int i = 0; i < 20; i++) {
        pass(Duration.ofMinutes(2));
        Nursery.sync(ledger);
      }
      wall = wall.minus(Duration.ofDays(365));
      pass(Duration.ofMinutes(61));
      Nursery.sync(ledger);
      assertEquals(DAY, scan(ledger, LINE).size());
    }
  }
}
