package feedwitness.store;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Fifty of the thousand cuts of the benchmark (docs/performance.md). */
class PowerCutTest {
  @TempDir Path folder;

  @Test
  void losesNothingThatWasCalledDurableWhenThePowerIsCut() throws Exception {
    PowerCuts cuts = new PowerCuts(folder, 20_260_601, 5);
    DiskLog log = cuts.record(150, Duration.ZERO);
    assertTrue(log.forces() > 150, "every sync forces");
    cuts.cut(log, 50);
    assertTrue(cuts.opened() >= 50);
  }
}
