package feedwitness.store;

import feedwitness.app.KilledService;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.TimeSource;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Measures the store beside a row a reading in SQLite, in the same run, and prints tables. The
 * command is in DEVELOPERS.md.
 */
public final class StoreBenchmark {
  private static final long SEED = 20_260_601;
  private static final int BLOCK = 400_000;

  /** The writer takes half of it at a time: a day of each probe. */
  private static final int QUEUE = 800_000;

  private static final int RUNS = 31;

  static final int POINTS = 1_000;
  private static final double GIGA = 1e9;

  private final Path folder;
  private final List<String> rows = new ArrayList<>();
  private double sqliteOctets = Double.NaN;

  private StoreBenchmark(Path folder) {
    this.folder = folder;
  }

  /**
   * @param arguments {@code readings=10000000 hours=24 years=10 cuts=1000 kills=20 folder=DIR}; 0
   *     leaves a part out
   */
  public static void main(String[] arguments) throws Exception {
    BenchmarkOptions options = BenchmarkOptions.parse(arguments);
    Files.createDirectories(options.folder());
    Path folder = Files.createTempDirectory(options.folder(), "benchmark");
    StoreBenchmark benchmark = new StoreBenchmark(folder);
    benchmark.head(options);
    if (options.readings() > 0) {
      benchmark.readings(options.readings());
      benchmark.daily(options.readings());
    }
    if (options.hours() > 0) {
      benchmark.wear(options.hours());
    }
    if (options.years() > 0) {
      new LongHistoryBenchmark(benchmark, SEED).run(options.years());
    }
    if (options.cuts() > 0) {
      benchmark.cuts(options.cuts());
    }
    if (options.kills() > 0) {
      benchmark.kills(options.kills());
    }
    System.out.println();
    benchmark.rows.forEach(System.out::println);
    BenchmarkOptions.delete(folder);
  }

  private void head(BenchmarkOptions options) throws IOException {
    System.out.println(options.machine());
    System.out.println(
        "JVM "
            + Runtime.version()
            + " "
            + ManagementFactory.getRuntimeMXBean().getInputArguments());
    System.out.println(
        "seed %d; 4 probes, 0.001 mS/cm and 0.1 °C, stamps to 1 ms; %s"
            .formatted(SEED, options.text()));
    rows.add("| what | Feedwitness | SQLite, a row a reading | ratio | reach |");
    rows.add("|---|---|---|---|---|");
  }

  void row(String text) {
    rows.add(text);
    System.out.println(text);
  }

  void row(String what, String unit, double ours, double theirs, String reach) {
    rows.add(
        String.format(
            Locale.ROOT,
            "| %s | %s %s | %s %s | %.2f | %s |",
            what,
            number(ours),
            unit,
            number(theirs),
            unit,
            ours / theirs,
            reach));
    System.out.println(rows.get(rows.size() - 1));
  }

  private static String number(double value) {
    return String.format(
        Locale.ROOT, value >= 1000 ? "%.0f" : value >= 10 ? "%.1f" : "%.2f", value);
  }

  static H2Ledger open(Path directory, H2File file) {
    LedgerOpening opening =
        new LedgerOpener(
                new StoreSettings(directory, Duration.ofSeconds(60), QUEUE, 0, Optional.empty()),
                TimeSource.system(),
                new Migrator(Migration.all()),
                file,
                () -> Long.MAX_VALUE)
            .open();
    return ((LedgerOpening.Opened) opening).ledger();
  }

  Path directory(String name) throws IOException {
    return Files.createTempDirectory(folder, name);
  }

  /** So that neither store pays for the compiler. */
  private void warmUp() throws Exception {
    Path ours = directory("warm");
    BenchmarkData data = new BenchmarkData(SEED, 1_000);
    try (SqliteRows sqlite = new SqliteRows(ours, "normal");
        H2Ledger ledger = open(ours, new H2File(ours))) {
      for (int i = 0; i < 3; i++) {
        List<Measurement> block = data.next(BLOCK, ledger.boot());
        block.forEach(ledger::append);
        ledger.sync(Duration.ofMinutes(5));
        sqlite.insert(block);
      }
      day(ledger, sqlite, data.end());
    }
    BenchmarkOptions.delete(ours);
  }

  /** Size, insert and a day's course, at a tenth and at all of the readings. */
  private void readings(long readings) throws Exception {
    warmUp();
    Path ours = directory("ours");
    Path theirs = directory("theirs");
    BenchmarkData data = new BenchmarkData(SEED, 1_000);
    long nanosOurs = 0;
    long cpuOurs = 0;
    long cpuTheirs = 0;
    long nanosTheirs = 0;
    double[] tenth = {0, 0};
    try (SqliteRows sqlite = new SqliteRows(theirs, "normal")) {
      try (H2Ledger ledger = open(ours, new H2File(ours))) {
        for (long done = 0; done < readings; done += BLOCK) {
          List<Measurement> block = data.next(BLOCK, ledger.boot());
          long cpu = BenchmarkOptions.processorNanos();
          long start = System.nanoTime();
          block.forEach(ledger::append);
          ledger.sync(Duration.ofMinutes(5));
          // and a second time: by then the hours are sealed as well
          ledger.sync(Duration.ofMinutes(5));
          long between = System.nanoTime();
          cpuOurs += BenchmarkOptions.processorNanos() - cpu;
          cpu = BenchmarkOptions.processorNanos();
          sqlite.insert(block);
          cpuTheirs += BenchmarkOptions.processorNanos() - cpu;
          nanosTheirs += System.nanoTime() - between;
          nanosOurs += between - start;
          if (tenth[0] == 0 && done + BLOCK >= readings / 10) {
            tenth = day(ledger, sqlite, data.end());
          }
        }
        double[] all = day(ledger, sqlite, data.end());
        row("insert", "readings/s", rate(readings, nanosOurs), rate(readings, nanosTheirs), "≥ 2");
        row(
            "processor time to insert a million",
            "s",
            cpuOurs / (readings * 1e3),
            cpuTheirs / (readings * 1e3),
            "");
        row("24 h to 1000 points", "ms", all[0], all[1], "≤ 0.33");
        if (tenth[0] > 0) {
          row("the same, a tenth of the history", "ms", tenth[0], tenth[1], "");
          System.out.printf(Locale.ROOT, "ten times the history: × %.2f%n", all[0] / tenth[0]);
        }
      }
      sqliteOctets = sqlite.octets() / (double) readings;
    }
    lookOver(new H2File(ours).path());
    BenchmarkOptions.delete(ours);
    BenchmarkOptions.delete(theirs);
  }

  /** What the first start after a power cut costs besides, beside copying the file to nowhere. */
  private void lookOver(Path file) throws IOException {
    double[] ours = new double[RUNS];
    double[] plain = new double[RUNS];
    for (int i = 0; i < RUNS; i++) {
      long start = System.nanoTime();
      WentBack.look(file);
      long between = System.nanoTime();
      Files.copy(file, OutputStream.nullOutputStream());
      ours[i] = (between - start) / 1e6;
      plain[i] = (System.nanoTime() - between) / 1e6;
    }
    Arrays.sort(ours);
    Arrays.sort(plain);
    double megaOctets = Files.size(file) / 1e6;
    row(
        String.format(
            Locale.ROOT,
            "| looking a file of %.0f MB over after a power cut | %.0f ms | reading it: %.0f ms | %.1f | |",
            megaOctets,
            ours[RUNS / 2],
            plain[RUNS / 2],
            ours[RUNS / 2] / plain[RUNS / 2]));
  }

  private static double rate(long count, long nanos) {
    return count / (nanos / GIGA);
  }

  /** Milliseconds of ours and theirs, medians over days picked at random. */
  private static double[] day(H2Ledger ledger, SqliteRows sqlite, Instant end) throws SQLException {
    return medians(
        ledger,
        Duration.ofDays(1),
        end,
        (point, from, to) -> sqlite.course(point, from, to, POINTS));
  }

  private interface Theirs {
    int course(int point, Instant from, Instant to) throws SQLException;
  }

  private static double[] medians(H2Ledger ledger, Duration span, Instant end, Theirs theirs)
      throws SQLException {
    Random random = new Random(SEED);
    long room = Duration.between(BenchmarkData.START, end).minus(span).toMillis();
    double[] ours = new double[RUNS];
    double[] other = new double[RUNS];
    for (int warm = 0; warm < 2; warm++) {
      for (int i = 0; i < RUNS; i++) {
        int point = random.nextInt(BenchmarkData.POINTS.size());
        Instant from =
            BenchmarkData.START.plusMillis(room <= 0 ? 0 : (long) (random.nextDouble() * room));
        long start = System.nanoTime();
        ledger.course(BenchmarkData.POINTS.get(point), from, from.plus(span), POINTS);
        long between = System.nanoTime();
        theirs.course(point, from, from.plus(span));
        ours[i] = (between - start) / 1e6;
        other[i] = (System.nanoTime() - between) / 1e6;
      }
    }
    Arrays.sort(ours);
    Arrays.sort(other);
    return new double[] {ours[RUNS / 2], other[RUNS / 2]};
  }

  /**
   * The file as daily use leaves it: ten seconds of readings a forced sync, but at once and without
   * waiting for the disk. Days pass in seconds, so the time for which H2 keeps what it no longer
   * needs is shortened alike, from 45 s to 2 ms.
   */
  private void daily(long readings) throws Exception {
    Path ours = directory("daily");
    AtomicLong octets = new AtomicLong();
    BenchmarkData data = new BenchmarkData(SEED, 1_000);
    H2File file = WatchedDisk.watch(ours, new WrittenOctets(octets, false), 2);
    try (H2Ledger ledger = open(ours, file)) {
      for (long done = 0; done < readings; done += 40) {
        data.next(40, ledger.boot()).forEach(ledger::append);
        ledger.sync(Duration.ofMinutes(1));
      }
      row(
          "octets a reading, while recording",
          "",
          Files.size(file.path()) / (double) readings,
          sqliteOctets,
          "≤ 2 octets");
    }
    WatchedDisk.forget(ours);
    row(
        "the same, after stopping",
        "",
        Files.size(file.path()) / (double) readings,
        sqliteOctets,
        "");
    System.out.printf(
        Locale.ROOT,
        "over all of it %.1f GB a year were written%n",
        octets.get() * (40.0 / readings) * 365 * 8_640 / GIGA);
    BenchmarkOptions.delete(ours);
  }

  /** What reaches the disk in hours of four probes at 1 Hz, safe every ten seconds. */
  private void wear(int hours) throws Exception {
    Path ours = directory("wear");
    AtomicLong octets = new AtomicLong();
    BenchmarkData data = new BenchmarkData(SEED, 1_000);
    long before = BenchmarkOptions.writtenByThisProcess();
    try (H2Ledger ledger =
        open(ours, WatchedDisk.watch(ours, new WrittenOctets(octets, true), 45_000))) {
      octets.set(0);
      for (int i = 0; i < hours * 360; i++) {
        data.next(40, ledger.boot()).forEach(ledger::append);
        ledger.sync(Duration.ofMinutes(1));
      }
    }
    double counted = octets.get();
    double seen = BenchmarkOptions.writtenByThisProcess() - before;
    WatchedDisk.forget(ours);
    double tens = sqliteWear(hours, 40);
    double ones = sqliteWear(hours, 4);
    double year = 365.0 * 24 / hours / GIGA;
    row("written a year, forced every 10 s; SQLite too", "GB", counted * year, tens * year, "");
    row(
        "the same; SQLite committing every second",
        "GB",
        counted * year,
        ones * year,
        "≤ 60 GB, ≤ 0.1");
    System.out.printf(Locale.ROOT, "the kernel counted %.1f GB a year for ours%n", seen * year);
  }

  private double sqliteWear(int hours, int readingsACommit) throws Exception {
    Path theirs = directory("wear");
    BenchmarkData data = new BenchmarkData(SEED, 1_000);
    long before = BenchmarkOptions.writtenByThisProcess();
    try (SqliteRows sqlite = new SqliteRows(theirs, "full")) {
      for (int i = 0; i < hours * 3_600 * 4 / readingsACommit; i++) {
        sqlite.insert(data.next(readingsACommit, 1));
      }
    }
    double written = BenchmarkOptions.writtenByThisProcess() - before;
    BenchmarkOptions.delete(theirs);
    return written;
  }

  /** The service on the demo, over one history. */
  private void kills(int kills) throws Exception {
    Path demo = directory("killed");
    long safe = KilledService.kill(demo, kills, new Random(SEED));
    rows.add(
        "| samples called safe before %d kills without warning, all found | %d | | | |"
            .formatted(kills, safe));
    BenchmarkOptions.delete(demo);
  }

  /**
   * In most recordings time runs 500 times as fast, and with it the time after which H2 uses room
   * again; the last is at its usual 45 s.
   */
  private void cuts(int cuts) throws Exception {
    int recordings = 4;
    int opened = 0;
    int salvages = 0;
    for (int i = 0; i < recordings; i++) {
      boolean usual = i == recordings - 1;
      PowerCuts power = new PowerCuts(folder, SEED + i, usual ? 45_000 : 90);
      DiskLog log = power.record(usual ? 500 : 1_000, Duration.ofMillis(usual ? 200 : 20));
      power.cut(log, cuts / recordings);
      opened += power.opened();
      salvages += power.salvages();
      System.out.printf(
          "%d files left by power cuts opened, %d of them salvaged, nothing lost%n",
          opened, salvages);
    }
    rows.add(
        "| files left by power cuts, opened with nothing lost | %d | | | %d |"
            .formatted(opened, cuts));
  }
}
