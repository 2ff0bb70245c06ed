package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.check.CheckClosed;
import feedwitness.check.CheckEvidence;
import feedwitness.check.CheckSubject;
import feedwitness.check.Doubt;
import feedwitness.check.Entry;
import feedwitness.check.ProbeCleaned;
import feedwitness.check.Round;
import feedwitness.check.StandardMeasured;
import feedwitness.check.StandardResult;
import feedwitness.check.Verdict;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.quantity.PointName;
import feedwitness.watch.diagnosis.Cause;
import feedwitness.watch.diagnosis.Diagnosis;
import feedwitness.watch.drift.DriftStanding.Phase;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What checks, a second probe and people say, in the running engine: it moves the diagnosis. */
@Timeout(120)
class FeedLineEvidenceTest {
  private static final String INJECTOR = "ratio = 80\nstrengths = [\"1.50 mS/cm\"]\n";

  @TempDir private Path folder;

  private static Diagnosis why(WateredLine line) {
    return line.status().standing().open().orElseThrow().diagnosis();
  }

  private static Cause first(WateredLine line) {
    return why(line).causes().get(0).cause();
  }

  private static EvidenceDraft draft(CheckEvidence fact) {
    return EvidenceDraft.of(fact.kind(), fact.subject().toText(), fact.toFields())
        .by(fact.author());
  }

  private static Entry entry(WateredLine line) {
    return new Entry("line-1", CheckSubject.probe(new PointName("line")), line.wall(), "Kim");
  }

  /** What the probe shows in a standard of 1.413 mS/cm at 25 °C, with a tolerance of 3 %. */
  private static EvidenceDraft measured(WateredLine line, double shown) {
    return draft(
        new StandardMeasured(
            entry(line),
            Round.AS_FOUND,
            new StandardResult(
                "low",
                "KCl 0.01 mol/L",
                1.413,
                1.413,
                shown,
                shown,
                25,
                30,
                List.of(new Doubt(Doubt.Source.CERTIFICATE, 0.3, false)),
                3)));
  }

  @Test
  void aProbeThatFailsItsCheckIsFouledAndTheInjectorIsNot() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.hours(7.5).probeShowing(0.93).hours(5);
      assertTrue(why(line).ambiguous(), () -> why(line).words());
      line.record(measured(line, 1.27));
      line.hours(0.05);
      assertEquals(Cause.PROBE_FOULED, first(line));
      assertFalse(why(line).ambiguous(), () -> why(line).words());
      String told = line.status().told();
      assertTrue(told.contains("likely causes, likeliest first: line probe fouled"), told);
    }
  }

  @Test
  void aProbeThatPassesItsCheckLeavesTheInjector() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.hours(7.5).delivering(0.88).hours(5);
      assertTrue(why(line).ambiguous(), () -> why(line).words());
      line.record(measured(line, 1.412));
      line.record(
          draft(new CheckClosed(entry(line), CheckClosed.Ending.FINISHED, Verdict.PASS, "")));
      line.hours(0.05);
      assertEquals(Cause.INJECTOR, first(line));
      assertTrue(why(line).causes().stream().noneMatch(each -> each.cause() == Cause.PROBE_FOULED));
      line.restart();
      line.hours(0.5);
      assertEquals(Cause.INJECTOR, first(line));
      assertTrue(why(line).causes().stream().noneMatch(each -> each.cause() == Cause.PROBE_FOULED));
    }
  }

  @Test
  void aCheckFromBeforeTheChangeSaysNothingOfIt() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.hours(7.5);
      line.record(measured(line, 1.412));
      line.record(
          draft(new CheckClosed(entry(line), CheckClosed.Ending.FINISHED, Verdict.PASS, "")));
      line.hours(0.5).delivering(0.88).hours(4.5);
      assertTrue(why(line).ambiguous(), () -> why(line).words());
    }
  }

  @Test
  void aSecondProbeThatAgreesLeavesTheInjector() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR + "second = \"line-2\"\n")) {
      line.hours(7.5).delivering(0.88).hours(5);
      assertEquals(Cause.INJECTOR, first(line));
      assertFalse(why(line).ambiguous(), () -> why(line).words());
    }
  }

  @Test
  void aSecondProbeThatDisagreesPointsAtTheLinesOwn() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR + "second = \"line-2\"\n")) {
      line.hours(7.5).probeShowing(0.93).hours(5);
      assertEquals(Cause.PROBE_FOULED, first(line));
      assertFalse(why(line).ambiguous(), () -> why(line).words());
    }
  }

  @Test
  void cleaningInACheckIsALoggedChange() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.hours(7.5).probeShowing(0.93).hours(5);
      line.record(draft(new ProbeCleaned(entry(line), "soft brush", Optional.empty())));
      line.probeShowing(1).hours(0.05);
      assertEquals(Phase.LEARNING, line.status().standing().phase());
      assertEquals(List.of(), line.alarms());
      String found = String.join("\n", line.findings());
      assertTrue(found.contains("probe cleaned; what is normal is learnt anew"), found);
    }
  }

  @Test
  void aFlushThatWasAnnouncedIsNoNews() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.hours(7.5);
      line.record(
          EvidenceDraft.of(
                  "feeding", "line", new TreeMap<>(Map.of("what", "PLAIN_WATER", "strength", "")))
              .by("Kim"));
      line.delivering(0).hours(2);
      assertEquals(List.of(), line.alarms());
      assertEquals(Phase.PLAIN_WATER, line.status().standing().phase());
      line.record(
          EvidenceDraft.of(
                  "feeding", "line", new TreeMap<>(Map.of("what", "UNSAID", "strength", "")))
              .by("Kim"));
      line.hours(2);
      assertEquals(List.of("plain-water"), line.alarms());
      String found = String.join("\n", line.findings());
      assertTrue(found.contains("note plain-water glasshouse: plain water, 0.4"), found);
    }
  }

  @Test
  void aStrengthThatSomebodyNamedIsNotStrange() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.hours(7.5);
      line.record(
          EvidenceDraft.of(
                  "strength",
                  "line",
                  new TreeMap<>(
                      Map.of(
                          "name", "line-195",
                          "title", "Heavy feeders",
                          "conductivity", "1.95",
                          "tolerance", "0.15")))
              .by("Kim"));
      line.hours(0.1).delivering(1.49 / 1.04).hours(4);
      assertEquals(List.of(), line.alarms());
      assertEquals(Phase.NORMAL, line.status().standing().phase());
      assertEquals(1.95, line.status().standing().expected(), 0.03);
    }
  }
}
