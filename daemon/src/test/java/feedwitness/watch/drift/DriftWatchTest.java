package feedwitness.watch.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.Octets;
import feedwitness.site.FeedLine;
import feedwitness.watch.diagnosis.Diagnosis;
import feedwitness.watch.drift.DriftFinding.Kind;
import feedwitness.watch.drift.DriftFinding.Stage;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a grower is told, and what the watch makes of bad input. */
class DriftWatchTest {
  private static final FeedLine LINE = NurseryWeek.glasshouse(List.of());

  private static Waterings learnt(FeedLine line) {
    return new Waterings(line, 3).hours(48);
  }

  private static List<DriftFinding> told(Waterings line) {
    return line.findings().stream().filter(f -> f.stage().compareTo(Stage.NOTICE) >= 0).toList();
  }

  private static boolean says(Waterings line, String... words) {
    return line.findings().stream()
        .anyMatch(f -> List.of(words).stream().allMatch(f.words()::contains));
  }

  @Test
  void learnsWhatIsNormalAndSaysSo() {
    Waterings line = learnt(LINE);
    assertEquals(List.of(), told(line));
    assertTrue(says(line, "glasshouse: what is normal has been learnt from 12 irrigation events"));
    assertEquals(1.50, line.watch().standing().expected(), 0.02);
  }

  @Test
  void namesSizeStartAndTheThreeTests() {
    Waterings line = learnt(LINE).hours(10.2);
    line.strength(0.46 + 1.04 * 0.88);
    line.hours(3);
    DriftFinding finding = told(line).get(0);
    assertEquals(Kind.STEP, finding.kind());
    assertEquals(Stage.ALARM, finding.stage());
    assertEquals(-12, finding.sizePercent(), 2);
    Instant turned = Instant.ofEpochMilli(Waterings.MONDAY).plus(Duration.ofMinutes(58 * 60 + 12));
    assertTrue(
        Duration.between(turned, finding.start()).abs().compareTo(Duration.ofMinutes(5)) < 0,
        () -> "" + finding.start());
    assertEquals(DriftFinding.Confidence.SURE, finding.confidence());
    assertTrue(finding.words().contains("alarm from 10 %"), finding.words());
    assertTrue(finding.words().contains("handheld meter"), finding.words());
  }

  @Test
  void severalStrengthsInADayAreEachJudgedByTheirOwnPast() {
    Waterings line = new Waterings(LINE, 4);
    for (int day = 0; day < 4; day++) {
      line.strength(1.50);
      line.hours(12);
      line.strength(1.95);
      line.hours(12);
    }
    assertEquals(List.of(), told(line));
    line.strength(0.46 + 1.04 * 0.93);
    line.hours(9.2);
    assertTrue(told(line).get(0).kind().isDrift());
    assertEquals(-7, told(line).get(0).sizePercent(), 2);
    long before = told(line).size();
    line.hours(2.8);
    line.strength(0.46 + 1.49 * 0.93);
    line.hours(12);
    assertEquals(
        before, told(line).size(), "the sag is common to both strengths and was told already");
  }

  @Test
  void aStrengthNeverSeenIsAskedAboutOnce() {
    Waterings line = learnt(LINE);
    line.strength(2.40);
    line.hours(19);
    List<DriftFinding> told = told(line);
    assertEquals(1, told.size(), told::toString);
    assertTrue(told.get(0).diagnosis().words().contains("set to another strength"));
    assertEquals(DriftStanding.Phase.SHIFTED, line.watch().standing().phase());
    line.strength(1.50);
    line.hours(24);
    assertTrue(says(line, "glasshouse: back to normal"));
    assertEquals(DriftStanding.Phase.NORMAL, line.watch().standing().phase());
  }

  @Test
  void theSourceProbeFallingSilentIsSaidAndJudgingGoesOn() {
    Waterings line = learnt(LINE);
    line.source(false);
    line.hours(35);
    assertTrue(says(line, "source probe has said nothing for 24 h", "0.46 mS/cm is used"));
    line.strength(0.46 + 1.04 * 0.88);
    line.hours(8);
    assertTrue(told(line).get(0).kind().isDrift());
  }

  @Test
  void aSourceProbeThatComesLateIsSaidAndTheDriftIsJudgedAnew() {
    Waterings line = new Waterings(LINE, 5);
    line.source(false);
    line.hours(48);
    line.source(true);
    line.hours(24);
    assertTrue(says(line, "source water is measured from now on", "learnt anew"));
    line.strength(0.46 + 1.04 * 0.88);
    line.hours(24);
    assertEquals(-12, told(line).get(told(line).size() - 1).sizePercent(), 2);
  }

  @Test
  void aSizeThatOnlyMayHaveReachedTheLimitIsNotPutForwardAsOneThatHas() {
    FindingWords words = new FindingWords(LINE);
    String small = words.shifted(-4.1, 1.3, Stage.NOTICE, false, Diagnosis.NONE);
    assertEquals(
        "glasshouse: 4.1 % less feed is mixed in than normal (± 1.3 %), perhaps as much as the"
            + " notice limit of 5 %; look at the chart",
        small);
    String large = words.shifted(-5.0, 1.3, Stage.NOTICE, false, Diagnosis.NONE);
    assertTrue(large.contains("(± 1.3 %), notice from 5 %"), large);
    String alarm = words.shifted(9.4, 1.3, Stage.ALARM, true, Diagnosis.NONE);
    assertTrue(alarm.contains("perhaps as much as the alarm limit of 10 %"), alarm);
  }

  @Test
  void withoutASourceProbeTheWholeStrengthIsJudged() {
    Waterings line = new Waterings(LINE, 5);
    line.source(false);
    line.hours(58);
    assertTrue(says(line, "source water is not known", "give the feed line a source point"));
    line.strength(0.46 + 1.04 * 0.88);
    line.hours(4);
    assertEquals(-8.5, told(line).get(0).sizePercent(), 1.5);
  }

  @Test
  void aRecipeChangedInMidEventIsSaidAndThatEventIsNotJudged() {
    Waterings line = learnt(LINE).hours(10.03);
    line.strength(1.20);
    line.note(LineChange.RECIPE);
    assertTrue(
        says(line, "recipe changed", "learnt anew", "event under way is not judged"),
        () -> line.findings().toString());
    line.hours(30);
    assertEquals(List.of(), told(line));
    assertEquals(1.20, line.watch().standing().expected(), 0.02);
  }

  @Test
  void aRecipeChangedInMidEventWhileADriftLastsEndsItAndLearnsAnew() {
    Waterings line = learnt(LINE);
    line.strength(0.46 + 1.04 * 0.88);
    line.hours(10.03);
    assertEquals(DriftStanding.Phase.SHIFTED, line.watch().standing().phase());
    int before = told(line).size();
    line.strength(1.20);
    line.note(LineChange.RECIPE);
    assertTrue(says(line, "what was told before ends here: recipe changed"));
    assertTrue(says(line, "recipe changed", "event under way is not judged"));
    assertEquals(DriftStanding.Phase.LEARNING, line.watch().standing().phase());
    assertTrue(line.watch().standing().open().isEmpty());
    line.hours(30);
    assertEquals(before, told(line).size(), told(line)::toString);
    line.strength(0.46 + 0.74 * 0.90);
    line.hours(20);
    DriftFinding again = told(line).get(before);
    assertTrue(again.kind().isDrift());
    assertEquals(-10, told(line).get(told(line).size() - 1).sizePercent(), 2);
  }

  @Test
  void aBarrelFilledInMidEventLeavesOutThatEventAndKeepsWhatIsNormal() {
    Waterings line = learnt(LINE).hours(10.03);
    int events = line.watch().standing().events();
    line.note(LineChange.STOCK_FILLED);
    assertTrue(says(line, "stock filled", "what is normal stays", "event under way is not judged"));
    assertEquals(events, line.watch().standing().events());
    line.hours(1.2);
    assertEquals(events + 2, line.watch().standing().events());
    assertEquals(DriftStanding.Phase.NORMAL, line.watch().standing().phase());
  }

  @Test
  void aRatioOfZeroWhileADriftLastsEndsItAndPlainWaterIsNoFault() {
    Waterings line = learnt(LINE);
    line.strength(0.46 + 1.04 * 0.88);
    line.hours(24);
    int before = told(line).size();
    line.note(LineChange.TURNED_OFF);
    assertTrue(says(line, "what was told before ends here: injector set to inject nothing"));
    line.strength(0.46);
    line.hours(24);
    assertEquals(before, told(line).size(), told(line)::toString);
    assertFalse(says(line, "though the injector is set to inject nothing"));
    assertEquals(DriftStanding.Phase.OFF, line.watch().standing().phase());
    assertTrue(line.watch().standing().open().isEmpty());
  }

  @Test
  void aLoggedChangeEndsWhatWasTold() {
    Waterings line = learnt(LINE);
    line.strength(0.46 + 1.04 * 0.88);
    line.hours(24);
    assertEquals(DriftStanding.Phase.SHIFTED, line.watch().standing().phase());
    line.note(LineChange.SERVICED);
    assertTrue(says(line, "what was told before ends here: injector serviced"));
    assertEquals(DriftStanding.Phase.LEARNING, line.watch().standing().phase());
  }

  @Test
  void aRatioOfZeroIsSaidAndNothingIsJudgedUntilTheNextChange() {
    Waterings line = learnt(LINE);
    line.note(LineChange.TURNED_OFF);
    assertTrue(says(line, "set to inject nothing", "nothing is judged until the next change"));
    line.hours(24);
    assertTrue(says(line, "1.5", "note the ratio it is really set to"));
    assertEquals(DriftStanding.Phase.OFF, line.watch().standing().phase());
    line.note(LineChange.RATIO);
    line.hours(24);
    assertEquals(DriftStanding.Phase.NORMAL, line.watch().standing().phase());
    assertEquals(List.of(), told(line));
  }

  @Test
  void aClockThatJumpsIsSaidAndChangesNothing() {
    Waterings line = learnt(LINE);
    line.jumpClock(Duration.ofDays(-300).toMillis());
    line.hours(24);
    assertTrue(says(line, "clock jumped by -25920000 s"));
    assertEquals(List.of(), told(line));
    line.strength(0.46 + 1.04 * 0.88);
    line.hours(12);
    assertTrue(told(line).get(0).kind().isDrift());
  }

  @Test
  void aClockSetByHoursInMidEventIsSaidAndADriftIsStillSeen() {
    for (int hours : new int[] {5, -5}) {
      Waterings line = learnt(LINE).hours(10.03);
      line.jumpClock(Duration.ofHours(hours).toMillis());
      line.hours(2);
      assertTrue(says(line, "clock jumped by %+d s".formatted(3600 * hours)));
      assertEquals(List.of(), told(line));
      assertEquals(DriftStanding.Phase.NORMAL, line.watch().standing().phase());
      line.strength(0.46 + 1.04 * 0.88);
      line.hours(24);
      DriftFinding finding = told(line).get(0);
      assertTrue(finding.kind().isDrift());
      long soFar = 48 * 60 + 602 + 120;
      Instant turned = Instant.ofEpochMilli(Waterings.MONDAY).plus(Duration.ofMinutes(soFar));
      Duration late = Duration.between(turned.plus(Duration.ofHours(hours)), finding.start());
      assertTrue(late.toHours() < 20 && !late.isNegative(), () -> hours + " h: " + late);
    }
  }

  @Test
  void aRestartWithTheClockHoursBackLosesNothing() {
    Waterings line = learnt(LINE).hours(10);
    line.restart(-Duration.ofHours(7).toMillis());
    line.hours(2);
    assertEquals(DriftStanding.Phase.NORMAL, line.watch().standing().phase());
    line.strength(0.46 + 1.04 * 0.88);
    line.hours(24);
    assertTrue(told(line).get(0).kind().isDrift());
  }

  @Test
  void plainWaterIsNoDrift() {
    Waterings line = learnt(LINE);
    line.strength(0.46);
    line.hours(24);
    assertEquals(List.of(Kind.PLAIN_WATER), told(line).stream().map(DriftFinding::kind).toList());
    line.strength(1.50);
    line.hours(24);
    assertTrue(says(line, "feed is mixed in again"));
  }

  @Test
  void anInjectorThatLosesItsPrimeAgainAndAgainIsUnsteady() {
    Waterings line = learnt(LINE).hours(7);
    double[] strengths = {0.70, 1.00, 0.62, 1.10, 0.80, 0.66};
    for (double one : strengths) {
      line.strength(one);
      line.hours(0.5);
    }
    assertTrue(told(line).stream().anyMatch(f -> f.kind() == Kind.UNSTEADY), told(line)::toString);
  }

  @Test
  void aRestartChangesNothing() {
    Waterings without = learnt(LINE).hours(10);
    Waterings with = learnt(LINE).hours(10);
    for (int i = 0; i < 12; i++) {
      with.use(DriftWatch.resume(LINE, with.watch().state()));
      for (Waterings each : List.of(without, with)) {
        each.strength(0.46 + 1.04 * 0.93);
        each.hours(0.37);
      }
    }
    assertFalse(told(without).isEmpty());
    assertEquals(without.findings(), with.findings());
    assertEquals(without.watch().state(), with.watch().state());
    assertEquals(without.watch().standing(), with.watch().standing());
  }

  @Test
  void itsStateDoesNotGrow() {
    assertTrue(learnt(LINE).hours(24 * 10).watch().state().length() < 20_000);
  }

  @Test
  void aDamagedStateIsRefusedInPlainWords() {
    byte[] state = learnt(LINE).watch().state().toArray();
    state[40] ^= 1;
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class, () -> DriftWatch.resume(LINE, Octets.of(state)));
    assertTrue(String.valueOf(refused.getMessage()).contains("learnt anew"));
    assertThrows(IllegalArgumentException.class, () -> DriftWatch.resume(LINE, Octets.NONE));
  }

  @Test
  void whatLiesOffTheConfiguredStrengthFromTheStartIsSaid() {
    Waterings line = new Waterings(NurseryWeek.glasshouse(List.of(1.75)), 6);
    line.hours(24);
    DriftFinding finding = told(line).get(0);
    assertEquals(Kind.OFF_RECIPE, finding.kind());
    assertEquals(-19.4, finding.sizePercent(), 2);
    assertTrue(finding.words().contains("1.75 mS/cm"), finding.words());
  }
}
