package feedwitness.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.sample.Indication;
import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KilledTest {
  private static final int ROUNDS = 6;

  @TempDir Path directory;

  @Test
  void losesNothingAtOrBelowTheMarkWhenKilled() throws Exception {
    Random random = new Random(9);
    long[] marks = new long[ROUNDS + 1];
    for (int round = 1; round <= ROUNDS; round++) {
      marks[round] = appendUntilKilled(1 + random.nextInt(12));
      try (H2Ledger ledger = Nursery.open(directory)) {
        assertEquals(2 * round, ledger.boot(), "every start is counted, killed or not");
        for (int killed = 1; killed <= round; killed++) {
          assertAllThere(ledger, 2 * killed - 1, marks[killed]);
        }
      }
    }
  }

  /** Returns the last mark that was published before the end. */
  private long appendUntilKilled(int marksToWaitFor) throws Exception {
    Process process = OtherProcess.start(directory, "append");
    long mark = 0;
    try (BufferedReader output = process.inputReader(StandardCharsets.UTF_8)) {
      int seen = 0;
      for (String line = output.readLine(); line != null; line = output.readLine()) {
        if (line.startsWith("durable ")) {
          mark = Long.parseLong(line.substring(8));
          if (++seen == marksToWaitFor) {
            // by its handle: Process.destroyForcibly would close the output we still read
            process.toHandle().destroyForcibly();
          }
        }
      }
      process.waitFor();
      assertTrue(seen >= marksToWaitFor, "only " + seen + " marks before the process ended");
    } finally {
      process.destroyForcibly();
    }
    return mark;
  }

  private static void assertAllThere(H2Ledger ledger, int boot, long mark) {
    TreeSet<Long> found = new TreeSet<>();
    for (PointName point : List.of(Nursery.LINE, Nursery.TANK)) {
      for (Measurement m : Nursery.scan(ledger, point)) {
        if (m.stamp().boot() == boot) {
          assertTrue(found.add(m.stamp().sequence()), "twice: " + m.stamp().id());
          assertEquals(
              OtherProcess.value(m.stamp().sequence()),
              ((Indication) m.sample()).reading().conductivity());
        }
      }
    }
    assertEquals(mark, found.headSet(mark, true).size(), "all up to the mark of boot " + boot);
    assertEquals(found.size(), found.last(), "no hole above it either");
  }
}
