package feedwitness.store;

import static feedwitness.store.Nursery.LINE;
import static feedwitness.store.Nursery.MONDAY;
import static feedwitness.store.Nursery.measured;
import static feedwitness.store.Nursery.scan;
import static feedwitness.store.Nursery.stamp;
import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.measurement.Measurement;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The database fails under a running ledger, as it does when a disk is full. */
class FailureTest {
  @TempDir Path directory;

  private final List<Measurement> all = new ArrayList<>();

  private void append(H2Ledger ledger, int count) {
    for (int i = 0; i < count; i++) {
      long sequence = all.size() + 1L;
      Instant wall = MONDAY.plusSeconds(60 * sequence);
      Measurement m = measured(LINE, stamp(1, sequence, wall), 1.5, 20);
      ledger.append(m);
      all.add(m);
    }
  }

  /** Closes the database without writing anything more, in the middle of the ledger's work. */
  private void pullTheDatabaseAway() throws Exception {
    try (FileLook look = new FileLook(directory)) {
      look.run("shutdown immediately");
    }
  }

  @Test
  void recordsOnAfterTheDatabaseFailedAndLosesNothing() throws Exception {
    StoreSettings seldom = new StoreSettings(directory, Duration.ofSeconds(60), 1_024);
    try (H2Ledger ledger = Nursery.open(seldom)) {
      for (int round = 0; round < 3; round++) {
        append(ledger, 100);
        Nursery.sync(ledger);
        assertEquals(all, scan(ledger, LINE));
        append(ledger, 50);
        pullTheDatabaseAway();
        Nursery.sync(ledger);
        assertEquals(all, scan(ledger, LINE));
        assertEquals(all.size(), ledger.durableThrough().sequence());
        assertEquals(Optional.empty(), ledger.trouble(), "over and no longer told");
      }
    }
    try (H2Ledger ledger = Nursery.open(directory)) {
      assertEquals(all, scan(ledger, LINE));
    }
  }

  @Test
  void saysWhatKeepsItFromRecordingWhileItLasts() throws Exception {
    StoreSettings seldom = new StoreSettings(directory, Duration.ofSeconds(60), 1_024);
    try (H2Ledger ledger = Nursery.open(seldom)) {
      append(ledger, 10);
      pullTheDatabaseAway();
      Process other = null;
      try {
        // whoever holds the file now keeps the ledger from opening it again
        other = OtherProcess.start(directory, "take");
        assertEquals("taken", new String(other.getInputStream().readNBytes(5), US_ASCII));
        assertTrue(!ledger.sync(Duration.ofMillis(500)));
        String words = ledger.trouble().orElseThrow();
        assertTrue(words.contains(directory.toString()), words);
        assertTrue(words.contains("check free space"), words);
        assertEquals(0, ledger.durableThrough().sequence());
      } finally {
        if (other != null) {
          other.getOutputStream().close();
          other.waitFor();
        }
      }
      Nursery.sync(ledger);
      assertEquals(all, scan(ledger, LINE));
      assertEquals(Optional.empty(), ledger.trouble());
    }
  }
}
