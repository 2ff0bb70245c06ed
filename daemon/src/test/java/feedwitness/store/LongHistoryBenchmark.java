package feedwitness.store;

import feedwitness.measurement.Measurement;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/** Measures long courses, and how much longer they take when history is longer. */
final class LongHistoryBenchmark {
  /** Short calls, so many of them. */
  private static final int COURSES = 201;

  private final StoreBenchmark benchmark;
  private final long seed;

  LongHistoryBenchmark(StoreBenchmark benchmark, long seed) {
    this.benchmark = benchmark;
    this.seed = seed;
  }

  /**
   * A season and a year, in one year of history and in many; a reading every five minutes. The
   * histories take turns, call by call: a machine that is busy for a minute is busy for all.
   */
  void run(int years) throws Exception {
    Path shortOnes = benchmark.directory("year");
    Path longOnes = benchmark.directory("years");
    BenchmarkData data = new BenchmarkData(seed, 300_000);
    int aDay = 4 * 288;
    try (SqliteRows sqliteYear = new SqliteRows(shortOnes, "off");
        SqliteRows sqlite = new SqliteRows(longOnes, "off");
        H2Ledger ledgerYear = StoreBenchmark.open(shortOnes, new H2File(shortOnes));
        H2Ledger ledger = StoreBenchmark.open(longOnes, new H2File(longOnes))) {
      Instant firstYear = Instant.EPOCH;
      for (int day = 0; day < 366 * years; day++) {
        List<Measurement> block = data.next(aDay, ledger.boot());
        block.forEach(ledger::append);
        sqlite.insert(block);
        if (day < 366) {
          block.forEach(ledgerYear::append);
          sqliteYear.insert(block);
          firstYear = data.end();
        }
      }
      ledgerYear.sync(Duration.ofMinutes(5));
      ledger.sync(Duration.ofMinutes(5));
      sqliteYear.rollUp();
      sqlite.rollUp();
      List<Course> turns =
          List.of(
              new Course(ledgerYear, sqliteYear, firstYear),
              new Course(ledger, sqlite, data.end()));
      hours(turns, years, "a season (150 d)", 150);
      hours(turns, years, "a year", 365);
    }
    BenchmarkOptions.delete(shortOnes);
    BenchmarkOptions.delete(longOnes);
  }

  /** One history in both stores, and its end. */
  private record Course(H2Ledger ledger, SqliteRows sqlite, Instant end) {
    void time(Random random, Duration span, double[] ours, double[] theirs, int i)
        throws SQLException {
      int point = random.nextInt(BenchmarkData.POINTS.size());
      long room = Duration.between(BenchmarkData.START, end).minus(span).toMillis();
      Instant from = BenchmarkData.START.plusMillis((long) (random.nextDouble() * room));
      long start = System.nanoTime();
      ledger.course(BenchmarkData.POINTS.get(point), from, from.plus(span), StoreBenchmark.POINTS);
      long between = System.nanoTime();
      sqlite.courseOfHours(point, from, from.plus(span), StoreBenchmark.POINTS);
      ours[i] = (between - start) / 1e6;
      theirs[i] = (System.nanoTime() - between) / 1e6;
    }
  }

  private void hours(List<Course> turns, int years, String what, int days) throws SQLException {
    Random random = new Random(seed);
    double[][] ours = new double[2][COURSES];
    double[][] theirs = new double[2][COURSES];
    for (int warm = 0; warm < 2; warm++) {
      for (int i = 0; i < COURSES; i++) {
        for (int which = 0; which < 2; which++) {
          turns.get(which).time(random, Duration.ofDays(days), ours[which], theirs[which], i);
        }
      }
    }
    for (int which = 0; which < 2; which++) {
      Arrays.sort(ours[which]);
      Arrays.sort(theirs[which]);
      benchmark.row(
          "%s in %d years".formatted(what, which == 0 ? 1 : years),
          "ms",
          ours[which][COURSES / 2],
          theirs[which][COURSES / 2],
          "≤ 3");
    }
    benchmark.row(
        String.format(
            Locale.ROOT,
            "| %s, %d times the history: so much slower | × %.2f | × %.2f | | ≤ 1.2 |",
            what,
            years,
            ours[1][COURSES / 2] / ours[0][COURSES / 2],
            theirs[1][COURSES / 2] / theirs[0][COURSES / 2]));
  }
}
