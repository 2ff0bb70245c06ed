package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.ledger.Evidence;
import feedwitness.watch.drift.DriftFinding;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The demo's week through the real engine, alarms and store, with a restart on Thursday night. */
@Timeout(240)
class FeedLineWeekTest {
  @TempDir private static Path folder;

  private static List<Evidence> findings = List.of();
  private static List<Evidence> alarms = List.of();
  private static List<DriftFinding> replayed = List.of();

  @BeforeAll
  static void play() throws Exception {
    try (PlayedWeek week = new PlayedWeek(folder)) {
      week.until(12, 3);
      week.restart();
      week.until(16, 0);
      findings = week.records("drift");
      alarms = week.records("alarm");
      replayed = week.replayed();
    }
  }

  private static List<String> told(int day) {
    return findings.stream()
        .filter(f -> f.field("stage").matches("notice|alarm"))
        .filter(f -> f.at().wall().atZone(DemoFolder.ZONE).getDayOfMonth() == day)
        .map(f -> f.field("kind"))
        .distinct()
        .toList();
  }

  private static List<String> raised(int day) {
    return alarms.stream()
        .filter(a -> a.subject().equals("glasshouse"))
        .filter(a -> a.field("transition").equals("RAISED"))
        .filter(a -> a.at().wall().atZone(DemoFolder.ZONE).getDayOfMonth() == day)
        .map(a -> a.field("kind"))
        .distinct()
        .toList();
  }

  @Test
  void aReplayOfWhatIsStoredGivesTheAnswerOfTheLiveWatch() {
    assertEquals(
        findings.stream().map(f -> f.field("detected") + " " + f.field("words")).toList(),
        replayed.stream().map(f -> f.detected() + " " + f.words()).toList());
  }

  @Test
  void mondaysBatchInTheTankIsNoMatterOfTheLine() {
    assertEquals(List.of(), told(9));
    assertEquals(List.of(), raised(9));
  }

  @Test
  void tuesdaysStickingValveIsNoticedAndAlarmed() {
    assertTrue(told(10).contains("ramp"), () -> "" + told(10));
    assertTrue(raised(10).contains("injector-drift"), () -> "" + alarms);
  }

  @Test
  void wednesdaysScaleIsNoticedAsADriftThatMayBeTheProbe() {
    List<Evidence> scale =
        findings.stream()
            .filter(f -> f.at().wall().atZone(DemoFolder.ZONE).getDayOfMonth() == 11)
            .filter(f -> f.field("causes").contains("probe-fouled"))
            .toList();
    assertFalse(scale.isEmpty());
    assertEquals("true", scale.get(scale.size() - 1).field("ambiguous"));
  }

  @Test
  void thursdaysTopUpOfTheTankIsNoMatterOfTheLine() {
    assertEquals(List.of(), told(12));
  }

  @Test
  void emptyBarrelPulledCableBypassAndFlushAreNoInjectorDrift() {
    for (int day = 13; day <= 15; day++) {
      assertEquals(List.of("plain-water"), told(day), "day " + day);
      assertEquals(List.of("plain-water"), raised(day), "day " + day);
    }
  }
}
