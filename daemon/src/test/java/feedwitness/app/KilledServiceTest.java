package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(240)
class KilledServiceTest {
  private static final int KILLS = 3;

  @TempDir Path folder;

  @Test
  void losesNothingThatWasSaidToBeSafeHoweverOftenItIsKilled() throws Exception {
    long safe = KilledService.kill(folder, KILLS, new Random(17));
    assertTrue(safe >= KILLS, safe + " samples were safe");
  }
}
