package feedwitness.store;

import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Indication;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Records with a ledger on a watched disk, then cuts the power at many moments of that recording,
 * opens what was left and looks whether all is there that was called durable. What opening writes
 * is cut as well.
 */
final class PowerCuts {
  private static final List<PointName> POINTS = List.of(Nursery.LINE, Nursery.TANK);

  private final Path folder;
  private final int retentionMillis;
  private final Random random;
  private int opened;
  private int salvages;

  /**
   * @param retentionMillis for which H2 keeps what is not needed any more: where days are recorded
   *     in seconds, room is used again only if that is short
   */
  PowerCuts(Path folder, long seed, int retentionMillis) {
    this.folder = folder;
    this.retentionMillis = retentionMillis;
    this.random = new Random(seed);
  }

  /** How many files left by cuts were opened and read. */
  int opened() {
    return opened;
  }

  /** How many of them had to be set aside and salvaged. */
  int salvages() {
    return salvages;
  }

  /** Records for a number of forced syncs, each of some samples, and closes in order. */
  DiskLog record(int syncs, Duration pause) throws IOException, InterruptedException {
    Path directory = Files.createTempDirectory(folder, "recording");
    DiskLog log = new DiskLog(new byte[0]);
    try (H2Ledger ledger = open(directory, log)) {
      long sequence = 0;
      for (int i = 0; i < syncs; i++) {
        int samples = 1 + random.nextInt(80);
        for (int j = 0; j < samples; j++) {
          ledger.append(sample(ledger.boot(), ++sequence));
        }
        Nursery.sync(ledger);
        log.marked(ledger.boot(), ledger.durableThrough().sequence());
        Thread.sleep(pause.toMillis());
      }
    }
    WatchedDisk.forget(directory);
    return log;
  }

  /** Half a minute a sample: an hour is sealed every few syncs. */
  private static Measurement sample(int boot, long sequence) {
    return Nursery.measured(
        POINTS.get((int) (sequence % 2)),
        Nursery.stamp(boot, sequence, Nursery.MONDAY.plusSeconds(30 * sequence)),
        OtherProcess.value(sequence),
        20);
  }

  private H2Ledger open(Path directory, DiskLog log) {
    StoreSettings settings = new StoreSettings(directory, Duration.ofSeconds(60), 65_536);
    H2File file = WatchedDisk.watch(directory, log, retentionMillis);
    LedgerOpening opening =
        new LedgerOpener(
                settings,
                TimeSource.system(),
                new Migrator(Migration.all()),
                file,
                () -> Long.MAX_VALUE)
            .open();
    if (opening instanceof LedgerOpening.Opened ready) {
      return ready.ledger();
    }
    throw new AssertionError(opening.toString());
  }

  /** Cuts a recording at a number of moments spread over it. */
  void cut(DiskLog log, int times) throws IOException {
    for (int i = 0; i < times; i++) {
      int moment = (int) ((i + random.nextDouble()) * (log.size() + 1) / times);
      DiskLog.Cut cut = log.cut(moment, random);
      DiskLog opening =
          look(
              cut,
              "cut before event %d of %d, leaving %s".formatted(moment, log.size(), cut.story()));
      if (random.nextInt(4) == 0) {
        int again = random.nextInt(opening.size() + 1);
        DiskLog.Cut second = opening.cut(again, random);
        look(
            new DiskLog.Cut(second.left(), cut.boot(), cut.sequence(), second.story()),
            "cut before event %d, leaving %s; and again before event %d of opening it, leaving %s"
                .formatted(moment, cut.story(), again, second.story()));
      }
    }
  }

  /** Opens what was left; returns what opening and closing wrote. */
  private DiskLog look(DiskLog.Cut cut, String when) throws IOException {
    Path directory = Files.createTempDirectory(folder, "cut");
    Path file = new H2File(directory).path();
    Files.write(file, cut.left().toArray());
    DiskLog log = new DiskLog(cut.left().toArray());
    try (H2Ledger ledger = open(directory, log)) {
      check(ledger, cut, when);
    } catch (AssertionError e) {
      throw new AssertionError("%s (%s)".formatted(when, directory), e);
    }
    WatchedDisk.forget(directory);
    boolean salvaged = false;
    try (Stream<Path> files = Files.list(directory)) {
      salvaged = files.anyMatch(each -> each.toString().contains("-damaged-"));
    }
    delete(directory);
    opened++;
    salvages += salvaged ? 1 : 0;
    // another file was written then, and what it was is not in the log
    return salvaged ? new DiskLog(cut.left().toArray()) : log;
  }

  private static void check(H2Ledger ledger, DiskLog.Cut cut, String when) {
    Set<Long> found = new HashSet<>();
    for (PointName point : POINTS) {
      for (Measurement m : Nursery.scan(ledger, point)) {
        long sequence = m.stamp().sequence();
        double value = ((Indication) m.sample()).reading().conductivity();
        if (!found.add(sequence) || value != OtherProcess.value(sequence)) {
          throw new AssertionError(
              "%s: sample %s is there twice or wrong".formatted(when, m.stamp().id()));
        }
      }
    }
    for (long sequence = 1; sequence <= cut.sequence(); sequence++) {
      if (!found.contains(sequence)) {
        throw new AssertionError(
            "%s: sample %d is lost, %d was called durable"
                .formatted(when, sequence, cut.sequence()));
      }
    }
    Optional<String> trouble = ledger.trouble().filter(words -> !words.contains("set aside as"));
    if (trouble.isPresent()) {
      throw new AssertionError(when + ": " + trouble.get());
    }
  }

  private static void delete(Path directory) throws IOException {
    try (Stream<Path> files = Files.list(directory)) {
      for (Path file : files.toList()) {
        Files.delete(file);
      }
    }
    Files.delete(directory);
  }
}
