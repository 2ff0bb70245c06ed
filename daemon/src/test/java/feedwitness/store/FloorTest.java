package feedwitness.store;

import static feedwitness.store.Nursery.LINE;
import static feedwitness.store.Nursery.MONDAY;
import static feedwitness.store.Nursery.measured;
import static feedwitness.store.Nursery.scan;
import static feedwitness.store.Nursery.stamp;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.TimeSource;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A disk that fills up, and is made room on again. */
class FloorTest {
  private static final long FLOOR = 200_000_000;

  @TempDir Path directory;

  private final AtomicLong free = new AtomicLong(FLOOR);

  private H2Ledger open() {
    StoreSettings settings =
        new StoreSettings(directory, Duration.ofSeconds(60), 64, FLOOR, Optional.empty());
    return ((LedgerOpening.Opened) H2Ledger.open(settings, TimeSource.system(), free::get))
        .ledger();
  }

  private static void append(H2Ledger ledger, int from, int to) {
    for (int i = from; i <= to; i++) {
      ledger.append(measured(LINE, stamp(ledger.boot(), i, MONDAY.plusSeconds(i)), 1.5, 20));
    }
  }

  @Test
  void stopsLoudlyBelowTheFloorAndResumesByItself() throws Exception {
    try (H2Ledger ledger = open()) {
      append(ledger, 1, 10);
      Nursery.sync(ledger);
      free.set(FLOOR - 1);
      append(ledger, 11, 20);
      assertFalse(ledger.sync(Duration.ofMillis(300)));
      String words = ledger.trouble().orElseThrow();
      assertTrue(words.contains("200.0 MB free, less than the floor of 200.0 MB"), words);
      assertTrue(words.contains("resumes by itself"), words);
      assertEquals(10, ledger.durableThrough().sequence());
      assertEquals(20, scan(ledger, LINE).size(), "what waits is seen");
      // many more than can wait: nobody blocks, and live values go on
      append(ledger, 21, 500);
      assertTrue(ledger.trouble().orElseThrow().contains("were not recorded so far"));
      assertEquals(500, ledger.latest(LINE).orElseThrow().stamp().sequence());
      free.set(FLOOR);
      Nursery.sync(ledger);
      assertEquals(Optional.empty(), ledger.trouble());
      append(ledger, 501, 510);
      Nursery.sync(ledger);
      assertEquals(510, ledger.durableThrough().sequence());
      assertEquals(10 + 10 + 64 + 10, scan(ledger, LINE).size());
    }
    try (FileLook look = new FileLook(directory)) {
      assertEquals(1, look.count("not_recorded where samples = 416 and first_seq = 85"));
    }
  }

  @Test
  void whatIsInMemoryAtTheEndIsWrittenEvenBelowTheFloor() {
    free.set(0);
    try (H2Ledger ledger = open()) {
      append(ledger, 1, 20);
    }
    free.set(FLOOR);
    try (H2Ledger ledger = open()) {
      assertEquals(20, scan(ledger, LINE).size());
    }
  }
}
