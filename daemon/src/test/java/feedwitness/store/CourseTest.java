package feedwitness.store;

import static feedwitness.store.Nursery.LINE;
import static feedwitness.store.Nursery.MONDAY;
import static feedwitness.store.Nursery.TANK;
import static feedwitness.store.Nursery.measured;
import static feedwitness.store.Nursery.missing;
import static feedwitness.store.Nursery.stamp;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.ledger.Bucket;
import feedwitness.ledger.History;
import feedwitness.measurement.Measurement;
import feedwitness.quality.Flags;
import feedwitness.sample.Missing;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The course against a brute-force computation from every single measurement. */
class CourseTest {
  /** Roll-ups are kept as 32-bit floats. */
  private static final double RELATIVE = 2e-7;

  @TempDir Path directory;

  /** Four days with gaps, missing readings, missing temperatures and a quarter of an hour twice. */
  private static List<Measurement> fourDays(Random random) {
    List<Measurement> all = new ArrayList<>();
    Instant wall = MONDAY.plusMillis(random.nextInt(3_600_000));
    double level = 1.5;
    for (int i = 1; i <= 14_000; i++) {
      level += random.nextGaussian() * 0.004;
      wall = wall.plusMillis(15_000 + random.nextInt(15_000));
      if (random.nextInt(900) == 0) {
        wall = wall.plusSeconds(random.nextInt(20_000));
      } else if (random.nextInt(4_000) == 0) {
        wall = wall.minusSeconds(900);
      }
      int kind = random.nextInt(50);
      if (kind == 0) {
        all.add(missing(LINE, stamp(1, i, wall), Missing.Cause.SILENT, "line: silent for 6 s"));
      } else {
        double celsius = kind == 1 ? Double.NaN : 18 + random.nextInt(80) / 10.0;
        all.add(measured(LINE, stamp(1, i, wall), Math.rint(level * 1_000) / 1_000, celsius));
      }
    }
    return all;
  }

  private static List<Bucket> bruteForce(
      List<Measurement> all, Instant from, Instant to, Duration width) {
    Map<Long, List<Measurement>> groups = new TreeMap<>();
    long single = 0;
    for (Measurement m : all) {
      if (!m.stamp().wall().isBefore(from) && m.stamp().wall().isBefore(to)) {
        long key =
            width.isZero()
                ? single++
                : Math.floorDiv(m.stamp().wallMillis(), width.toMillis()) * width.toMillis();
        groups.computeIfAbsent(key, unused -> new ArrayList<>()).add(m);
      }
    }
    List<Bucket> buckets = new ArrayList<>();
    groups.forEach(
        (start, group) ->
            buckets.add(bucket(width.isZero() ? group.get(0).stamp().wallMillis() : start, group)));
    buckets.sort(java.util.Comparator.comparing(Bucket::start));
    return buckets;
  }

  private static Bucket bucket(long start, List<Measurement> group) {
    double[] values =
        group.stream()
            .mapToDouble(Measurement::conductivity25MilliSiemensPerCm)
            .filter(v -> !Double.isNaN(v))
            .toArray();
    Flags flags = Flags.NONE;
    for (Measurement m : group) {
      flags = flags.with(m.flags());
    }
    return new Bucket(
        Instant.ofEpochMilli(start),
        java.util.Arrays.stream(values).average().orElse(Double.NaN),
        java.util.Arrays.stream(values).min().orElse(Double.NaN),
        java.util.Arrays.stream(values).max().orElse(Double.NaN),
        group.stream()
            .mapToDouble(Measurement::temperatureCelsius)
            .filter(v -> !Double.isNaN(v))
            .average()
            .orElse(Double.NaN),
        values.length,
        group.size() - values.length,
        flags);
  }

  private static void assertAgrees(
      List<Measurement> all, History history, Instant from, Instant to, int max) {
    History.Course course = history.course(LINE, from, to, max);
    List<Bucket> expected = bruteForce(all, from, to, course.bucketWidth());
    String where = "%s to %s in %d: %s".formatted(from, to, max, course.bucketWidth());
    assertTrue(course.buckets().size() <= max, where);
    assertEquals(expected.size(), course.buckets().size(), where);
    for (int i = 0; i < expected.size(); i++) {
      Bucket e = expected.get(i);
      Bucket c = course.buckets().get(i);
      assertEquals(e.start(), c.start(), where);
      assertEquals(e.readings(), c.readings(), where);
      assertEquals(e.missing(), c.missing(), where);
      assertEquals(e.flags(), c.flags(), where);
      close(e.meanMilliSiemensPerCm(), c.meanMilliSiemensPerCm(), where);
      close(e.minMilliSiemensPerCm(), c.minMilliSiemensPerCm(), where);
      close(e.maxMilliSiemensPerCm(), c.maxMilliSiemensPerCm(), where);
      close(e.meanCelsius(), c.meanCelsius(), where);
    }
    if (bruteForce(all, from, to, Duration.ZERO).size() <= max) {
      assertEquals(Duration.ZERO, course.bucketWidth(), where + ": few samples are not thinned");
    }
  }

  private static void close(double expected, double actual, String where) {
    double rounding = Double.isNaN(expected) ? 0 : Math.abs(expected) * RELATIVE;
    assertTrue(
        Double.compare(expected, actual) == 0 || Math.abs(expected - actual) <= rounding,
        () -> "%s: %s instead of %s".formatted(where, actual, expected));
  }

  @Test
  void agreesWithBruteForceAtEveryZoom() {
    Random random = new Random(20_260_601);
    List<Measurement> all = fourDays(random);
    Instant first = MONDAY;
    long span = Duration.ofDays(5).toMillis();
    try (H2Ledger ledger = Nursery.open(directory)) {
      all.subList(0, 10_000).forEach(ledger::append);
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      // sealed chunks, hot rows and pending samples together
      all.subList(10_000, 13_900).forEach(ledger::append);
      Nursery.sync(ledger);
      all.subList(13_900, 14_000).forEach(ledger::append);
      for (int round = 0; round < 250; round++) {
        long length = (long) Math.exp(random.nextDouble() * Math.log((double) span));
        Instant from = first.plusMillis(random.nextLong(-length, span));
        int max = 1 + random.nextInt(random.nextBoolean() ? 20 : 800);
        assertAgrees(all, ledger, from, from.plusMillis(length), max);
      }
      assertAgrees(all, ledger, Instant.EPOCH, Instant.parse("2100-01-01T00:00:00Z"), 500);
      assertAgrees(all, ledger, Instant.EPOCH, Instant.parse("2100-01-01T00:00:00Z"), 20_000);
      assertEquals(java.util.Optional.empty(), ledger.trouble());
    }
  }

  @Test
  void aGapIsLeftOutAndNotFilled() {
    try (H2Ledger ledger = Nursery.open(directory)) {
      for (int i = 1; i <= 600; i++) {
        Instant wall = MONDAY.plusSeconds(i < 300 ? i : 7_200 + i);
        ledger.append(measured(LINE, stamp(1, i, wall), 1.5, 20));
      }
      History.Course course = ledger.course(LINE, MONDAY, MONDAY.plus(Duration.ofHours(3)), 200);
      assertEquals(Duration.ofMinutes(1), course.bucketWidth());
      for (Bucket bucket : course.buckets()) {
        long minute = Duration.between(MONDAY, bucket.start()).toMinutes();
        assertTrue(minute < 5 || minute >= 124, "minute " + minute);
      }
      assertEquals(600, course.buckets().stream().mapToInt(Bucket::readings).sum());
    }
  }

  @Test
  void readsASeasonFromHoursEvenWhereTheirSamplesAreGone() throws Exception {
    int hours = 24 * 150;
    try (H2Ledger ledger = Nursery.open(directory)) {
      long sequence = 0;
      for (int hour = 0; hour < hours; hour++) {
        for (int i = 0; i < 4; i++) {
          Instant wall = MONDAY.plusSeconds(3_600L * hour + 900L * i);
          ledger.append(measured(LINE, stamp(1, ++sequence, wall), 1 + i / 10.0, 25));
          ledger.append(measured(TANK, stamp(1, ++sequence, wall), 2 + i / 10.0, 25));
        }
      }
    }
    // nothing but the hourly roll-ups is left to read the inner hours from
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(2, ledger.boot());
    }
    try (FileLook look = new FileLook(directory)) {
      look.run("delete from chunk");
      look.run("delete from rollup_minute");
      look.run("delete from rollup_quarter");
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      History.Course course =
          ledger.course(LINE, MONDAY, MONDAY.plus(Duration.ofHours(hours)), 500);
      assertEquals(Duration.ofHours(8), course.bucketWidth());
      assertEquals(4 * hours, course.buckets().stream().mapToInt(Bucket::readings).sum());
      assertEquals(1.021 * 1.0 - 0.004, course.buckets().get(200).minMilliSiemensPerCm(), 1e-6);
      assertEquals(1.021 * 1.15 - 0.004, course.buckets().get(200).meanMilliSiemensPerCm(), 1e-6);
      assertEquals(java.util.Optional.empty(), ledger.trouble());
    }
  }
}
