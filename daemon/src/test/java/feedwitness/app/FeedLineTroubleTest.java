package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.watch.drift.DriftStanding.Phase;
import feedwitness.watch.drift.LineChange;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What goes wrong around a feed line is said plainly, and the watch goes on with what there is. */
@Timeout(120)
class FeedLineTroubleTest {
  private static final String INJECTOR = "ratio = 80\nstrengths = [\"1.50 mS/cm\"]\n";

  @TempDir private Path folder;

  private static void said(WateredLine line, String words) {
    List<String> findings = line.findings();
    assertTrue(findings.stream().anyMatch(each -> each.contains(words)), () -> "" + findings);
  }

  @Test
  void aDamagedStateIsLetGoAndWhatIsNormalLearntAnew() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.hours(7);
      assertEquals(Phase.NORMAL, line.status().standing().phase());
      line.restartOnState("feed-line 2\nhalf a state");
      assertEquals(Phase.LEARNING, line.status().standing().phase());
      line.hours(6);
      assertEquals(Phase.NORMAL, line.status().standing().phase());
      said(line, "what is normal is learnt anew: what was kept is damaged or of another version");
    }
  }

  @Test
  void aStateWithFlippedOctetsIsLetGoToo() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.hours(7);
      line.restartOnState(line.kept().replaceFirst("(?m)^[A-Za-z0-9+/]{400}", "A".repeat(400)));
      assertEquals(Phase.LEARNING, line.status().standing().phase());
      said(line, "is damaged");
    }
  }

  @Test
  void anotherRatioInTheConfigurationIsLearntAnewAndSaid() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.hours(7);
      line.restart();
      assertEquals(Phase.NORMAL, line.status().standing().phase());
      line.restart(INJECTOR.replace("80", "60"));
      assertEquals(Phase.LEARNING, line.status().standing().phase());
      said(line, "points, mixer, recipe or strengths are configured otherwise than before");
    }
  }

  @Test
  void otherLimitsAreNoReasonToLearnAnew() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.hours(7);
      line.restart(INJECTOR + "notice-percent = 4\n");
      assertEquals(Phase.NORMAL, line.status().standing().phase());
    }
  }

  @Test
  void anInjectorSetToNothingIsNotJudgedAndFeedThatComesAllTheSameIsTold() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.hours(7);
      line.log(LineChange.TURNED_OFF);
      line.delivering(0).hours(2);
      assertEquals(Phase.OFF, line.status().standing().phase());
      assertEquals(List.of(), line.alarms());
      line.delivering(1).hours(2);
      said(line, "though the injector is set to inject nothing; note the ratio");
    }
  }

  @Test
  void aRecipeChangedInMidEventLeavesThatEventUnjudged() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.hours(7.03);
      line.log(LineChange.RECIPE);
      assertEquals(Phase.LEARNING, line.status().standing().phase());
      assertEquals(0, line.status().standing().events());
      said(line, "recipe changed; what is normal is learnt anew; the irrigation event under way");
    }
  }

  @Test
  void aSilentSourceIsSaidAndJudgingGoesOn() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.hours(7).source(false).hours(26).delivering(0.85).hours(4);
      assertEquals(List.of("injector-drift"), line.alarms());
      said(line, "source probe has said nothing for 24 h; its usual 0.46 mS/cm is used");
    }
  }

  @Test
  void aClockThatJumpsIsSaidAndNothingIsLost() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.hours(7).jumpClock(Duration.ofHours(3)).hours(2);
      assertEquals(Phase.NORMAL, line.status().standing().phase());
      said(line, "clock jumped by +10800 s; times before lie on the old clock");
    }
  }

  @Test
  void aReplayOfAllThisGivesTheSameAnswer() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.hours(7.03);
      line.log(LineChange.RECIPE);
      line.hours(6).delivering(0.85).hours(17);
      List<String> live = line.findings();
      assertEquals(live, line.replayed());
    }
  }
}
