package feedwitness.store;

import static feedwitness.store.Nursery.LINE;
import static feedwitness.store.Nursery.MONDAY;
import static feedwitness.store.Nursery.measured;
import static feedwitness.store.Nursery.scan;
import static feedwitness.store.Nursery.stamp;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.measurement.Measurement;
import feedwitness.quantity.TimeSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A power cut after which the database opens, without a word, in an old state of itself. */
class WentBackTest {
  private static final int HEADERS = 8_192;
  private static final int EARLY = 3;
  private static final int SYNCS = 30;

  @TempDir Path directory;
  @TempDir Path after;

  /** Where H2 wrote, besides its two headers. */
  private final List<Long> appended = new ArrayList<>();

  private final List<Measurement> recorded = new ArrayList<>();

  private H2File watched() {
    return WatchedDisk.watch(
        directory,
        new WatchedDisk.Watcher() {
          @Override
          public synchronized void written(long position, byte[] octets) {
            if (position >= HEADERS) {
              appended.add(position);
            }
          }

          @Override
          public void truncated(long size) {}

          @Override
          public void forced() {}

          @Override
          public boolean forcesForReal() {
            return false;
          }
        },
        45_000);
  }

  private H2Ledger ledger() {
    LedgerOpening opening =
        new LedgerOpener(
                Nursery.settings(directory),
                TimeSource.system(),
                new Migrator(Migration.all()),
                watched(),
                () -> Long.MAX_VALUE)
            .open();
    return ((LedgerOpening.Opened) opening).ledger();
  }

  private void append(H2Ledger ledger) {
    for (int i = 0; i < 20; i++) {
      long sequence = recorded.size() + 1L;
      Measurement m =
          measured(
              LINE,
              stamp(1, sequence, MONDAY.plusSeconds(10 * sequence)),
              1 + 0.1 * (sequence % 7),
              20);
      recorded.add(m);
      ledger.append(m);
    }
    Nursery.sync(ledger);
  }

  /**
   * A file in which H2 finds no way beyond an early state: its headers are old ones, and each step
   * from there is torn. What the steps led to is untouched.
   */
  private byte[] tornFile() throws IOException {
    Path file = new H2File(directory).path();
    try (H2Ledger ledger = ledger()) {
      for (int i = 0; i < EARLY; i++) {
        append(ledger);
      }
      byte[] headers = Arrays.copyOf(Files.readAllBytes(file), HEADERS);
      int before = appended.size();
      for (int i = EARLY; i < SYNCS; i++) {
        append(ledger);
      }
      byte[] left = Files.readAllBytes(file);
      System.arraycopy(headers, 0, left, 0, HEADERS);
      appended.subList(before, appended.size()).forEach(position -> tear(left, position));
      return left;
    } finally {
      WatchedDisk.forget(directory);
    }
  }

  private static void tear(byte[] file, long position) {
    Arrays.fill(file, (int) position, (int) position + 32, (byte) 0x55);
  }

  @Test
  void isNoticedAndTheHistorySavedFromWhatIsStillInTheFile() throws Exception {
    Files.write(new H2File(after).path(), tornFile());
    Connection silent = new H2File(after).openWriter();
    Optional<Top> known = Top.known(silent);
    H2File.abandon(silent);
    assertTrue(
        known.map(Top::sequence).orElse(0L) < recorded.size() / 2, "opens, and knows " + known);

    try (H2Ledger ledger = Nursery.open(after)) {
      assertEquals(recorded, scan(ledger, LINE));
      String words = ledger.trouble().orElseThrow();
      assertTrue(words.contains("600 samples"), words);
    }
    try (Stream<Path> files = Files.list(after)) {
      assertTrue(files.anyMatch(each -> each.toString().contains("-damaged-")));
    }
    try (H2Ledger ledger = Nursery.open(after)) {
      assertEquals(recorded, scan(ledger, LINE));
      assertEquals(Optional.empty(), ledger.trouble(), "and it is over");
    }
  }

  @Test
  void anOrderlyEndIsNotLookedOver() throws Exception {
    try (H2Ledger ledger = ledger()) {
      append(ledger);
    } finally {
      WatchedDisk.forget(directory);
    }
    Path lock = directory.resolve(H2File.LOCK);
    try (FileClaim claim = FileClaim.on(lock).orElseThrow()) {
      assertTrue(claim.afterOrderlyEnd());
      claim.announce("http://127.0.0.1:8460/");
    }
    try (FileClaim claim = FileClaim.on(lock).orElseThrow()) {
      assertTrue(!claim.afterOrderlyEnd(), "whoever announced an address never closed");
    }
    assertEquals("", FileClaim.addressIn("closed"), "is no address");
  }
}
