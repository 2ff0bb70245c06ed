package feedwitness.store;

import static feedwitness.store.Nursery.LINE;
import static feedwitness.store.Nursery.MONDAY;
import static feedwitness.store.Nursery.measured;
import static feedwitness.store.Nursery.scan;
import static feedwitness.store.Nursery.stamp;
import static org.junit.jupiter.api.Assertions.assertEquals;

import feedwitness.ledger.Bucket;
import feedwitness.ledger.History;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.Stamp;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ClockTest {
  @TempDir Path directory;

  /** Three hours, then the clock is set back two, then forward five. */
  private static List<Measurement> aJumpingClock() {
    List<Measurement> list = new ArrayList<>();
    Instant wall = MONDAY;
    for (int i = 1; i <= 1_440; i++) {
      if (i == 1_081) {
        wall = wall.minus(Duration.ofHours(2));
      } else if (i == 1_261) {
        wall = wall.plus(Duration.ofHours(5));
      }
      list.add(measured(LINE, stamp(1, i, wall), 1.4 + i / 10_000.0, 20));
      wall = wall.plusSeconds(10);
    }
    return list;
  }

  @Test
  void aClockSetBackMergesAndReordersNothing() {
    List<Measurement> all = aJumpingClock();
    try (H2Ledger ledger = Nursery.open(directory)) {
      all.forEach(ledger::append);
      Nursery.sync(ledger);
      Nursery.sync(ledger);
      assertEquals(all, scan(ledger, LINE));
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(all, scan(ledger, LINE));
      History.Course course = ledger.course(LINE, MONDAY, MONDAY.plus(Duration.ofHours(12)), 12);
      assertEquals(all.size(), course.buckets().stream().mapToInt(Bucket::readings).sum());
      Bucket twice = course.buckets().get(1);
      assertEquals(MONDAY.plus(Duration.ofHours(1)), twice.start());
      assertEquals(540, twice.readings(), "an hour lived one and a half times");
      assertEquals(all.get(all.size() - 1).stamp(), ledger.latest(LINE).orElseThrow().stamp());
    }
  }

  @Test
  void anHourThatComesAgainAfterARestartIsKeptTwice() {
    List<Measurement> all = new ArrayList<>();
    for (int boot = 1; boot <= 3; boot++) {
      try (H2Ledger ledger = Nursery.open(directory)) {
        for (int i = 1; i <= 20; i++) {
          Measurement m = measured(LINE, stamp(boot, i, MONDAY.plusSeconds(i)), boot, 20);
          ledger.append(m);
          all.add(m);
        }
      }
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(all, scan(ledger, LINE));
      assertEquals(60, ledger.course(LINE, MONDAY, MONDAY.plusSeconds(60), 100).buckets().size());
    }
  }

  @Test
  void aClockFarFromTheTruthLosesNothing() {
    long[] walls = {
      0, -1, Long.MAX_VALUE / 2, Long.MIN_VALUE / 2, -62_135_596_800_000L, 253_402_300_799_999L
    };
    List<Measurement> all = new ArrayList<>();
    try (H2Ledger ledger = Nursery.open(directory)) {
      for (int i = 0; i < walls.length; i++) {
        Measurement m = measured(LINE, new Stamp(1, i + 1, i, walls[i], true), 1.5, 20);
        ledger.append(m);
        all.add(m);
      }
      assertEquals(all, scan(ledger, LINE));
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(all, scan(ledger, LINE));
      assertEquals(
          walls.length, ledger.course(LINE, Instant.MIN, Instant.MAX, 100).buckets().size());
    }
  }
}
