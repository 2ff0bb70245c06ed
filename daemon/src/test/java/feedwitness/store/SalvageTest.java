package feedwitness.store;

import static feedwitness.store.Nursery.LINE;
import static feedwitness.store.Nursery.MONDAY;
import static feedwitness.store.Nursery.TANK;
import static feedwitness.store.Nursery.measured;
import static feedwitness.store.Nursery.scan;
import static feedwitness.store.Nursery.stamp;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.ledger.Bucket;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file that no database opens any more: what is sound in it is saved, and recording goes on. */
class SalvageTest {
  private static final int SAMPLES = 1_500;

  @TempDir Path directory;

  private final List<Measurement> line = new ArrayList<>();
  private final Random random = new Random(5);

  /** Some hours of two points, the first samples undated, in as many syncs as asked for. */
  private void record(H2Ledger ledger, int syncs) {
    for (int i = 0; i < SAMPLES; i++) {
      PointName point = i % 2 == 0 ? LINE : TANK;
      boolean dated = i >= 100;
      Stamp at = stamp(ledger.boot(), i + 1, MONDAY.plusSeconds(30L * i));
      long wall = dated ? at.wallMillis() : at.wallMillis() - Duration.ofDays(9_000).toMillis();
      Stamp taken = new Stamp(at.boot(), at.sequence(), 30_000_000_000L * i, wall, dated);
      Measurement m = measured(point, taken, OtherProcess.value(i), 20);
      ledger.append(m);
      if (point.equals(LINE)) {
        line.add(m);
      }
      if (i % (SAMPLES / syncs) == 0) {
        Nursery.sync(ledger);
      }
    }
    Nursery.sync(ledger);
  }

  private Path file() {
    return new H2File(directory).path();
  }

  private void overwrite(long position, int octets) throws IOException {
    byte[] junk = new byte[octets];
    random.nextBytes(junk);
    try (RandomAccessFile raw = new RandomAccessFile(file().toFile(), "rw")) {
      raw.seek(position);
      raw.write(junk);
    }
  }

  private List<Path> setAside() throws IOException {
    try (Stream<Path> files = Files.list(directory)) {
      return files.filter(f -> f.getFileName().toString().contains("-damaged-")).toList();
    }
  }

  private static List<String> ids(List<Measurement> measurements) {
    return measurements.stream().map(m -> m.stamp().id()).toList();
  }

  @Test
  void bothHeadersLostCostsNothing() throws Exception {
    List<Measurement> before;
    try (H2Ledger ledger = Nursery.open(directory)) {
      record(ledger, 20);
      before = scan(ledger, LINE);
    }
    overwrite(0, 8_192);
    try (H2Ledger ledger = Nursery.open(directory)) {
      String words = ledger.trouble().orElseThrow();
      assertTrue(words.contains("1500 samples"), words);
      assertTrue(words.contains(setAside().get(0).getFileName().toString()), words);
      assertEquals(before, scan(ledger, LINE), "dated, in order, each once");
      assertEquals(ids(line), ids(scan(ledger, LINE)));
      assertEquals(2, ledger.boot(), "no number is given twice");
      ledger.append(measured(LINE, stamp(2, 1, MONDAY.plusSeconds(90_000)), 1.5, 20));
      assertEquals(before.size() + 1, scan(ledger, LINE).size(), "and recording goes on");
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(before.size() + 1, scan(ledger, LINE).size());
      assertTrue(ledger.trouble().isEmpty());
    }
  }

  @Test
  void junkInTheMiddleCostsWhatLayThereAndNoMore() throws Exception {
    try (H2Ledger ledger = Nursery.open(directory)) {
      record(ledger, 100);
    }
    overwrite(0, 8_192);
    for (int i = 0; i < 3; i++) {
      overwrite(8_192 + (long) (random.nextDouble() * (Files.size(file()) - 12_288)), 4_096);
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      List<String> left = ids(scan(ledger, LINE));
      Set<String> once = new HashSet<>(left);
      assertEquals(left.size(), once.size(), "nothing twice");
      assertTrue(ids(line).containsAll(once), "nothing that never was");
      assertTrue(left.size() > line.size() / 2, left.size() + " of " + line.size());
      List<Long> order = scan(ledger, LINE).stream().map(m -> m.stamp().sequence()).toList();
      assertEquals(order.stream().sorted().toList(), order);
    }
  }

  @Test
  void rollUpsOutliveTheSamplesTheyWereMadeOf() throws Exception {
    int readings;
    try (H2Ledger ledger = Nursery.open(directory)) {
      record(ledger, 5);
    }
    try (FileLook look = new FileLook(directory)) {
      look.run("delete from chunk");
      look.run("shutdown compact");
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      readings = everyBucket(ledger);
      assertEquals(SAMPLES / 2, readings);
    }
    overwrite(0, 8_192);
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertTrue(ledger.trouble().orElseThrow().contains("set aside"));
      assertEquals(SAMPLES / 2, everyBucket(ledger));
    }
  }

  private static int everyBucket(H2Ledger ledger) {
    return ledger
        .course(LINE, MONDAY.minusSeconds(60), MONDAY.plus(Duration.ofDays(2)), 200)
        .buckets()
        .stream()
        .mapToInt(Bucket::readings)
        .sum();
  }

  @Test
  void aFileThatIsNoHistoryIsSetAsideUntouched() throws Exception {
    byte[] letters = "fertilizer ".repeat(2_000).getBytes(StandardCharsets.UTF_8);
    Files.write(file(), letters);
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(1, ledger.boot());
      assertTrue(ledger.trouble().orElseThrow().contains(" 0 samples"));
    }
    assertArrayEquals(letters, Files.readAllBytes(setAside().get(0)));
  }

  @Test
  void aFileCutShortGivesWhatIsLeftOfIt() throws Exception {
    try (H2Ledger ledger = Nursery.open(directory)) {
      record(ledger, 20);
    }
    try (RandomAccessFile raw = new RandomAccessFile(file().toFile(), "rw")) {
      raw.setLength(5_000);
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(1, setAside().size());
      assertTrue(scan(ledger, LINE).size() < line.size());
    }
  }

  @Test
  void damageWhileRunningIsSetAsideAndNothingInMemoryIsLost() throws Exception {
    try (H2Ledger ledger = Nursery.open(directory)) {
      record(ledger, 20);
      try (FileLook look = new FileLook(directory)) {
        look.run("shutdown immediately");
      }
      overwrite(0, 8_192);
      ledger.append(measured(LINE, stamp(1, SAMPLES + 1, MONDAY.plusSeconds(90_000)), 1.5, 20));
      Nursery.sync(ledger);
      assertEquals(line.size() + 1, scan(ledger, LINE).size());
      assertEquals(1, setAside().size());
      assertTrue(ledger.trouble().orElseThrow().contains("set aside"));
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(line.size() + 1, scan(ledger, LINE).size());
    }
  }

  @Test
  void aSalvageThatAPowerCutEndedIsFinished() throws Exception {
    Nursery.open(directory).close();
    Files.move(file(), new H2File(directory).beside(Salvage.FRESH).path());
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(2, ledger.boot());
    }
  }
}
