package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** When the demo plays. */
class DemoFolderTest {
  private static final Instant NOVEMBER = Instant.parse("2026-11-30T09:00:00Z");

  @TempDir private Path folder;

  @Test
  void playsNowAtNormalSpeed() throws Exception {
    assertEquals(NOVEMBER, DemoFolder.open(folder).clockStart(1, NOVEMBER));
  }

  @Test
  void playsAWeekOfLastJuneWhenSpeededUp() throws Exception {
    DemoFolder demo = DemoFolder.open(folder);
    assertEquals(Instant.parse("2026-06-15T05:00:00Z"), demo.clockStart(240, NOVEMBER));
    assertEquals(
        Instant.parse("2025-06-09T05:00:00Z"),
        demo.clockStart(240, Instant.parse("2026-06-16T09:00:00Z")));
    assertEquals(
        Instant.parse("2025-06-09T05:00:00Z"),
        demo.clockStart(240, Instant.parse("2026-02-01T09:00:00Z")));
  }

  @Test
  void goesOnWhereItEnded() throws Exception {
    DemoFolder demo = DemoFolder.open(folder);
    Files.writeString(folder.resolve("clock.txt"), "2026-06-17T10:00:00Z");
    assertEquals(Instant.parse("2026-06-17T10:00:00Z"), demo.clockStart(240, NOVEMBER));
  }
}
