package feedwitness.store;

import static feedwitness.store.Nursery.LINE;
import static feedwitness.store.Nursery.MONDAY;
import static feedwitness.store.Nursery.measured;
import static feedwitness.store.Nursery.stamp;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.ledger.Bucket;
import feedwitness.ledger.History;
import feedwitness.quantity.Stamp;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Forty days, a reading a quarter of an hour: long courses are read from a row a day. */
class DayRowsTest {
  private static final int DAYS = 40;
  private static final int READINGS = DAYS * 96;

  @TempDir Path directory;

  private static Instant at(int i) {
    return MONDAY.plusSeconds(900L * i);
  }

  private static void record(H2Ledger ledger) {
    for (int i = 0; i < READINGS; i++) {
      ledger.append(measured(LINE, stamp(1, i + 1, at(i)), 1 + i % 700 / 1_000.0, 20));
    }
    Nursery.sync(ledger);
  }

  /** Seals all, so that nothing is hot. */
  private void recordAndReopen() {
    try (H2Ledger ledger = Nursery.open(directory)) {
      record(ledger);
    }
    Nursery.open(directory).close();
  }

  private static List<Bucket> everything(H2Ledger ledger) {
    History.Course course =
        ledger.course(LINE, MONDAY.minusSeconds(1), MONDAY.plus(Duration.ofDays(60)), 400);
    assertTrue(course.bucketWidth().toHours() >= 1, course.bucketWidth()::toString);
    return course.buckets();
  }

  private static int readings(List<Bucket> buckets) {
    return buckets.stream().mapToInt(Bucket::readings).sum();
  }

  @Test
  void wholeDaysAreReadWithoutTheirHours() throws Exception {
    recordAndReopen();
    List<Bucket> before;
    try (H2Ledger ledger = Nursery.open(directory)) {
      before = everything(ledger);
      assertEquals(READINGS, readings(before));
    }
    try (FileLook look = new FileLook(directory)) {
      assertEquals(DAYS + 1, look.count("rollup_day"), "Monday begins at six");
      look.run("delete from chunk");
      look.run("delete from rollup_minute");
      // the hours of days that the range may cut stay
      long first = ChunkKey.of(1, ChunkKey.hourOf(MONDAY.toEpochMilli()), 0);
      long last = ChunkKey.of(1, ChunkKey.hourOf(at(READINGS).toEpochMilli()), 0);
      look.run(
          "delete from rollup_hour where k > %d and k < %d"
              .formatted(ChunkKey.endOfDay(ChunkKey.dayOf(first)), ChunkKey.dayOf(last)));
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(before, everything(ledger));
    }
  }

  @Test
  void aHistoryOfHoursGetsItsDaysWhenItIsBroughtForward() throws Exception {
    recordAndReopen();
    List<Bucket> before;
    try (H2Ledger ledger = Nursery.open(directory)) {
      before = everything(ledger);
    }
    try (FileLook look = new FileLook(directory)) {
      look.run("drop table rollup_day");
      look.run("delete from schema_version where version >= 4");
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(before, everything(ledger));
    }
    try (FileLook look = new FileLook(directory)) {
      assertEquals(DAYS + 1, look.count("rollup_day"));
    }
  }

  @Test
  void anHourThatComesLaterIsInItsDay() {
    recordAndReopen();
    try (H2Ledger ledger = Nursery.open(directory)) {
      // the clock was set back by twenty days, for two hours
      for (int i = 0; i < 120; i++) {
        Instant past = at(20 * 96).plusSeconds(60L * i);
        ledger.append(measured(LINE, stamp(ledger.boot(), i + 1, past), 3, 20));
      }
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      List<Bucket> course = everything(ledger);
      assertEquals(READINGS + 120, readings(course));
      assertTrue(course.stream().anyMatch(b -> b.maxMilliSiemensPerCm() > 3));
    }
  }

  @Test
  void samplesThatNeverGotADateAreCountedOnce() {
    recordAndReopen();
    try (H2Ledger ledger = Nursery.open(directory)) {
      for (int i = 0; i < 120; i++) {
        Stamp dated = stamp(ledger.boot(), i + 1, at(20 * 96).plusSeconds(60L * i));
        Stamp undated =
            new Stamp(
                dated.boot(), dated.sequence(), dated.monotonicNanos(), dated.wallMillis(), false);
        ledger.append(measured(LINE, undated, 3, 20));
      }
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(READINGS + 120, readings(everything(ledger)));
    }
  }

  @Test
  void aDayThatRottedIsReadFromItsHoursAndReported() throws Exception {
    recordAndReopen();
    List<Bucket> before;
    try (H2Ledger ledger = Nursery.open(directory)) {
      before = everything(ledger);
    }
    try (FileLook look = new FileLook(directory)) {
      look.run("delete from rollup_day where k < " + ChunkKey.dayOf(secondDay()));
      look.rot("rollup_day", "k");
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(before.size(), everything(ledger).size());
      assertEquals(READINGS, readings(everything(ledger)));
      assertTrue(ledger.trouble().orElseThrow().contains("not the hours"));
    }
  }

  private static long secondDay() {
    return ChunkKey.of(1, ChunkKey.hourOf(at(96).toEpochMilli()), 0);
  }

  @Test
  void anHourThatCannotBeReadLeavesTheOthersOfItsDay() throws Exception {
    recordAndReopen();
    try (FileLook look = new FileLook(directory)) {
      look.run("delete from rollup_hour where k < " + ChunkKey.dayOf(secondDay()));
      look.run("delete from rollup_day");
      look.run("delete from schema_version where version >= 4");
      look.run("update rollup_hour set whole = x'010203040506070809' where k = " + anHour());
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(READINGS - 72, readings(everything(ledger)), "the samples tell");
      assertTrue(ledger.trouble().orElseThrow().contains("not the samples"));
    }
  }

  private static long anHour() {
    return ChunkKey.of(1, ChunkKey.hourOf(at(96 * 7).toEpochMilli()), 0);
  }

  @Test
  void aSalvagedHistoryHasItsDays() throws Exception {
    recordAndReopen();
    List<Bucket> before;
    try (H2Ledger ledger = Nursery.open(directory)) {
      before = everything(ledger);
    }
    try (RandomAccessFile raw = new RandomAccessFile(new H2File(directory).path().toFile(), "rw")) {
      raw.write(new byte[8_192]);
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(before, everything(ledger));
    }
    try (FileLook look = new FileLook(directory)) {
      assertEquals(DAYS + 1, look.count("rollup_day"));
    }
  }
}
