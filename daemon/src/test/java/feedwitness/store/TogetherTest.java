package feedwitness.store;

import static feedwitness.store.Nursery.LINE;
import static feedwitness.store.Nursery.MONDAY;
import static feedwitness.store.Nursery.measured;
import static feedwitness.store.Nursery.stamp;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.ledger.Bucket;
import feedwitness.ledger.History;
import feedwitness.measurement.Measurement;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TogetherTest {
  private static final int SAMPLES = 12_000;

  @TempDir Path directory;

  @Test
  void readersSeeEverythingOnceWhileRecordingAndSealingGoOn() throws Exception {
    AtomicLong appended = new AtomicLong();
    ExecutorService readers = Executors.newFixedThreadPool(2);
    StoreSettings fast = new StoreSettings(directory, Duration.ofMillis(10), 256);
    try (H2Ledger ledger = Nursery.open(fast)) {
      List<Future<Integer>> results = new ArrayList<>();
      results.add(readers.submit(() -> scanUntilAllIsThere(ledger, appended)));
      results.add(readers.submit(() -> chartUntilAllIsThere(ledger, appended)));
      for (int i = 1; i <= SAMPLES; i++) {
        ledger.append(measured(LINE, stamp(1, i, MONDAY.plusSeconds(20L * i)), 1.5, 20));
        appended.set(i);
      }
      for (Future<Integer> result : results) {
        assertTrue(result.get(60, TimeUnit.SECONDS) > 0);
      }
      assertEquals(java.util.Optional.empty(), ledger.trouble());
    } finally {
      readers.shutdown();
    }
  }

  private static int scanUntilAllIsThere(H2Ledger ledger, AtomicLong appended) {
    int rounds = 0;
    int seen = 0;
    while (seen < SAMPLES) {
      long before = appended.get();
      List<Measurement> all = Nursery.scan(ledger, LINE);
      seen = all.size();
      assertTrue(seen >= before, "%d appended, %d seen".formatted(before, seen));
      for (int i = 0; i < seen; i++) {
        assertEquals(i + 1, all.get(i).stamp().sequence(), "each once and in order");
      }
      rounds++;
    }
    return rounds;
  }

  private static int chartUntilAllIsThere(H2Ledger ledger, AtomicLong appended) {
    int rounds = 0;
    int seen = 0;
    while (seen < SAMPLES) {
      long before = appended.get();
      History.Course course = ledger.course(LINE, Instant.EPOCH, Instant.MAX, 40);
      seen = course.buckets().stream().mapToInt(Bucket::readings).sum();
      assertTrue(seen >= before, "%d appended, %d charted".formatted(before, seen));
      rounds++;
    }
    return rounds;
  }
}
