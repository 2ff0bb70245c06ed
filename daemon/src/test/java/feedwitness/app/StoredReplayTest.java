package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** {@code feedwitness replay --line} as a grower runs it, with the service stopped and running. */
@Timeout(120)
class StoredReplayTest {
  private static final String LINE = "ratio = 80\nstrengths = [\"1.50 mS/cm\"]\n";

  @TempDir private Path folder;
  private String config = "";

  @BeforeEach
  void water() throws Exception {
    config = folder.resolve("feedwitness.toml").toString();
    try (WateredLine line = new WateredLine(folder, LINE)) {
      line.hours(7.5).delivering(0.85).hours(3);
    }
  }

  private Cli replay(String... more) {
    List<String> words =
        new ArrayList<>(List.of("replay", "--line", "glasshouse", "--config", config));
    words.addAll(List.of(more));
    return Cli.run(words.toArray(new String[0]));
  }

  @Test
  void findsWhatWasStoredWithTheServiceStopped() {
    Cli told = replay();
    assertEquals(0, told.code(), told.err());
    List<String> lines = told.out().lines().toList();
    assertEquals("start,detected,size_percent,kind", lines.get(0));
    assertTrue(lines.get(lines.size() - 1).matches("2026-06-01T13.*,-1[3-6]\\..,step"), told.out());
    assertTrue(told.err().contains("readings of line from 2026-06-01T06"), told.err());
    assertTrue(replay("--all").out().contains(",,learnt"), "remarks too");
  }

  @Test
  void theServiceGivesTheSameAnswer() throws Exception {
    String stopped = replay("--all").out();
    try (ServiceUnderTest service = ServiceUnderTest.start(folder, WateredLine.tables(LINE))) {
      assertTrue(service.page().getPort() > 0);
      Cli running = replay("--all", "--to", "2026-06-02");
      assertEquals(0, running.code(), running.err());
      assertEquals(stopped, running.out());
      assertTrue(running.err().contains("findings in what is stored of glasshouse"), running.err());
    }
  }

  @Test
  void aStretchWithoutReadingsHasNoFindings() {
    Cli none = replay("--from", "2026-07-01", "--to", "2026-07-02");
    assertEquals(0, none.code(), none.err());
    assertEquals("start,detected,size_percent,kind\n", none.out());
    assertTrue(none.err().contains("No readings of line are stored in that time"), none.err());
  }

  @Test
  void saysWhatIsNotUnderstood() {
    Cli other = Cli.run("replay", "--line", "pond", "--config", config);
    assertEquals(1, other.code());
    assertTrue(other.err().contains("no feed line 'pond'; there are: glasshouse"), other.err());
    assertEquals(2, Cli.run("replay").code());
    assertEquals(2, Cli.run("replay", "x.csv", "--line", "glasshouse").code());
    assertEquals(2, Cli.run("replay", "x.csv", "--from", "2026-06-01").code());
    assertEquals(2, replay("--input-at-25").code());
    assertEquals(2, replay("--from", "June").code());
    assertEquals(2, replay("--from", "2026-06-02", "--to", "2026-06-01").code());
  }
}
