package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.CalibrationCurve;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The routine at the probe, from as found to as left. */
class CheckSessionTest {
  private final Bench bench = new Bench();

  @Test
  void passesAGoodProbeAsFound() {
    CheckSession session = bench.round(bench.begin(Bench.plain()));
    assertEquals(Phase.ROUND_DONE, session.phase());
    assertEquals(Verdict.PASS, session.verdict());
    CheckReply closed = bench.keep(session.finish("the grower", bench.now()));
    CheckClosed end = assertInstanceOf(CheckClosed.class, closed.evidence().get(0));
    assertEquals(CheckClosed.Ending.FINISHED, end.ending());
    assertEquals(Verdict.PASS, end.verdict());
  }

  /** Sunday at Quarry End: 4.6 % low, 2.1 % low after cleaning, adjusted to within 0.2 %. */
  @Test
  void goesFromFailOverCleaningAndAdjustingToPass() {
    bench.gain = 0.954;
    CheckSession session = bench.round(bench.begin(Bench.plain()));
    assertEquals(Verdict.FAIL, session.verdict());
    assertEquals(-4.6, session.last(Round.AS_FOUND).get(1).errorPercent(), 0.15);

    bench.keep(session.cleaned("the grower", "soft brush, vinegar", bench.now()));
    bench.gain = 0.979;
    bench.round(session);
    assertEquals(Verdict.CANT_TELL, session.verdict());
    assertEquals(-2.1, session.last(Round.AFTER_CLEANING).get(0).errorPercent(), 0.15);

    bench.keep(session.adjust("the grower", "tank-a1", bench.now()));
    bench.round(session);
    assertEquals(Verdict.PASS, session.verdict());
    for (StandardResult result : session.last(Round.AS_LEFT)) {
      assertEquals(0, result.errorPercent(), 0.2);
    }
    bench.keep(session.finish("the grower", bench.now()));
    assertEquals(
        List.of(
            CheckStarted.KIND,
            StandardMeasured.KIND,
            StandardMeasured.KIND,
            ProbeCleaned.KIND,
            StandardMeasured.KIND,
            StandardMeasured.KIND,
            CurveAdjusted.KIND,
            StandardMeasured.KIND,
            StandardMeasured.KIND,
            CheckClosed.KIND),
        bench.kept.stream().map(CheckEvidence::kind).toList());
  }

  @Test
  void measuresTheWeakerStandardFirst() {
    CheckSession session = bench.begin(Bench.plain());
    assertEquals(Bench.LOW, session.standard().orElseThrow());
    assertTrue(session.guide().startsWith("rinse the probe with a little of KCl 0.01 mol/L"));
    bench.immerse(session);
    bench.settle(session, Bench.LOW, 400);
    assertEquals(Bench.MIDDLE, session.standard().orElseThrow());
  }

  @Test
  void takesNoStepOutOfItsOrder() {
    CheckSession session = bench.begin(Bench.plain());
    refused(session.immersed(bench.now()), "not the next step: rinse");
    refused(session.cleaned("the grower", "brush", bench.now()), "as found before cleaning");
    refused(session.adjust("the grower", "a1", bench.now()), "measure all standards");
    refused(session.finish("the grower", bench.now()), "not whole");
    assertEquals(Phase.RINSE, session.phase());
  }

  @Test
  void doesNotAdjustBeforeCleaningNorWithoutNeed() {
    bench.gain = 0.93;
    CheckSession dirty = bench.round(bench.begin(Bench.plain()));
    refused(dirty.adjust("the grower", "a1", bench.now()), "clean the probe");
    bench.keep(dirty.cleaned("the grower", "brush", bench.now()));
    bench.gain = 1;
    bench.round(dirty);
    refused(dirty.adjust("the grower", "a1", bench.now()), "leave it as it is");
  }

  @Test
  void refusesToAdjustOutsideTwentyPercent() {
    bench.gain = 0.75;
    CheckSession session = bench.round(bench.begin(Bench.plain()));
    bench.keep(session.cleaned("the grower", "brush", bench.now()));
    bench.round(session);
    CheckReply reply = session.adjust("the grower", "a1", bench.now());
    refused(reply, "more than 20 % off is not adjusted");
    refused(reply, "a bubble in the cell");
  }

  @Test
  void namesAMistakenUnit() {
    CheckSession session = bench.begin(Bench.plain());
    bench.immerse(session);
    refused(
        session.reading(new ProbeReading(bench.stamp(), 2770, 25)),
        "a display in µS/cm taken for mS/cm is 1000 times too high");
  }

  @Test
  void asksWhetherAnotherBottleIsMeant() {
    CheckSession session = bench.begin(Bench.plain());
    bench.immerse(session);
    CheckReply asked = bench.settle(session, Bench.MIDDLE, 400);
    assertEquals(Phase.DID_YOU_MEAN, session.phase());
    assertTrue(asked.words().contains("did you mean KCl 0.02 mol/L"), asked::words);
    assertEquals(List.of(), session.measured());
    bench.keep(session.wrongBottle(bench.now()));
    assertEquals(Phase.RINSE, session.phase());
    bench.round(session);
    assertEquals(Verdict.PASS, session.verdict());
  }

  @Test
  void keepsAStrangeReadingIfItReallyIsThatBottle() {
    CheckSession session = bench.begin(Bench.plain());
    bench.immerse(session);
    bench.settle(session, Bench.MIDDLE, 400);
    CheckReply reply = bench.keep(session.reallyThat(bench.now()));
    StandardMeasured kept = assertInstanceOf(StandardMeasured.class, reply.evidence().get(0));
    assertEquals(Verdict.FAIL, kept.result().verdict());
  }

  @Test
  void leavesOutAReadingThatMakesNoSense() {
    CheckSession session = bench.begin(Bench.plain());
    bench.immerse(session);
    refused(session.reading(new ProbeReading(bench.stamp(), -3, 21)), "makes no sense");
    refused(session.reading(new ProbeReading(bench.stamp(), Double.NaN, 21)), "makes no sense");
    bench.settle(session, Bench.LOW, 400);
    assertEquals(1, session.measured().size());
  }

  @Test
  void saysThatAStandardIsTooColdForItsTable() {
    bench.celsius = 21;
    CheckSession session = bench.begin(Bench.plain());
    bench.immerse(session);
    CheckReply reply = CheckReply.done("");
    for (int i = 0; i < 62 && reply.accepted(); i++) {
      bench.wait(Duration.ofSeconds(1));
      reply = session.reading(new ProbeReading(bench.stamp(), 1.3, 52));
    }
    refused(reply, "52 °C is outside the 0 to 50 °C");
    assertEquals(Phase.SETTLING, session.phase());
  }

  @Test
  void needsATemperatureFromSomewhere() {
    bench.celsius = 21;
    CheckSession session = bench.begin(Bench.plain());
    bench.immerse(session);
    CheckReply reply = CheckReply.done("");
    for (int i = 0; i < 62 && reply.accepted(); i++) {
      bench.wait(Duration.ofSeconds(1));
      reply = session.reading(new ProbeReading(bench.stamp(), 1.302, Double.NaN));
    }
    refused(reply, "measure it in the beaker and type it in");
    refused(
        session.temperature(new Thermometer(210, 0.2), bench.now()), "no temperature of a beaker");
    bench.keep(session.temperature(new Thermometer(21, Double.NaN), bench.now()));
    for (int i = 0; i < 62; i++) {
      bench.wait(Duration.ofSeconds(1));
      session.reading(new ProbeReading(bench.stamp(), 1.302, Double.NaN));
    }
    assertEquals(1, session.measured().size());
  }

  /** A sensor half a kelvin high hides 1 % of error; a thermometer in the beaker shows both. */
  @Test
  void believesAThermometerInTheBeakerRatherThanTheProbe() {
    CheckSession session = bench.begin(Bench.plain());
    bench.immerse(session);
    bench.keep(session.temperature(new Thermometer(bench.celsius - 0.5, 0.1), bench.now()));
    CheckReply reply = bench.settle(session, Bench.LOW, 400);
    StandardResult result = session.measured().get(0).result();
    assertEquals(bench.celsius - 0.5, result.celsius(), 1e-9);
    assertEquals(1, result.errorPercent(), 0.1);
    assertTrue(result.doubts().stream().anyMatch(d -> d.source() == Doubt.Source.THERMOMETER));
    ComparisonMade sensor = assertInstanceOf(ComparisonMade.class, reply.evidence().get(1));
    assertEquals(0.5, sensor.error(), 1e-6);
    assertEquals(Verdict.FAIL, sensor.verdict());
    refused(session.temperature(new Thermometer(21, 0.1), bench.now()), "in the standard itself");
  }

  @Test
  void checksAMeterByWhatIsReadOffIt() {
    bench.celsius = 15;
    CheckSession session = bench.begin(Instrument.handheld(0.01, true, 2));
    bench.immerse(session);
    // A right pen meter at 2 %/K shows KCl 1.3 % high at 15 °C: no fault of its own.
    bench.keep(session.typed(1.432, 15, bench.now()));
    assertEquals(0, session.measured().get(0).result().errorPercent(), 0.1);
    bench.immerse(session);
    refused(session.typed(2770, 15, bench.now()), "type what the display shows");
  }

  @Test
  void isClosedWhenNothingHappens() {
    CheckSession session = bench.begin(Bench.plain());
    bench.wait(Duration.ofMinutes(61));
    CheckReply reply = bench.keep(session.tick(bench.now()));
    CheckClosed end = assertInstanceOf(CheckClosed.class, reply.evidence().get(0));
    assertEquals(CheckClosed.Ending.TIMED_OUT, end.ending());
    assertEquals(Verdict.CANT_TELL, end.verdict());
    assertEquals(Phase.CLOSED, session.phase());
  }

  @Test
  void saysThatAStandardDoesNotComeToRest() {
    CheckSession session = bench.begin(Bench.plain());
    bench.immerse(session);
    for (int i = 0; i < 901; i++) {
      bench.wait(Duration.ofSeconds(1));
      bench.keep(session.reading(new ProbeReading(bench.stamp(), 1 + i / 1000.0, 21)));
    }
    CheckReply reply = bench.keep(session.tick(bench.now()));
    assertTrue(reply.words().contains("has not come to rest in 15 minutes"), reply::words);
    assertTrue(
        assertInstanceOf(CheckNoted.class, reply.evidence().get(0)).note().contains("to rest"));
    assertEquals(Phase.RINSE, session.phase());
  }

  @Test
  void takesOnlyWhatCanBeKept() {
    CheckSession session = bench.round(bench.begin(Bench.plain()));
    refused(session.cleaned("the grower", "x".repeat(1001), bench.now()), "at most 1000 fit");
    refused(session.cleaned("", "brush", bench.now()), "say who does it");
    refused(session.finish("y".repeat(81), bench.now()), "1 to 80 characters");
    assertEquals(Phase.ROUND_DONE, session.phase());
  }

  @Test
  void takesNothingAfterItsEnd() {
    bench.gain = 0.93;
    CheckSession session = bench.round(bench.begin(Bench.plain()));
    bench.keep(session.cleaned("the grower", "brush", bench.now()));
    bench.round(session);
    bench.keep(session.finish("the grower", bench.now()));
    refused(session.adjust("the grower", "a1", bench.now()), "put the probe back");
    refused(session.reallyThat(bench.now()), "nothing was asked");
    refused(session.finish("the grower", bench.now()), "put the probe back");
    refused(session.abandon("the grower", "", bench.now()), "closed already");
  }

  @Test
  void logsAnInstrumentThatAdjustsItself() {
    bench.gain = 0.9;
    CheckSession session = bench.round(bench.begin(Bench.plain()));
    bench.keep(session.adjustedByInstrument("the grower", "tank-a1", bench.now()));
    bench.gain = 1;
    bench.round(session);
    assertEquals(Verdict.PASS, session.verdict());
    ProbeHistory history = ProbeHistory.of(Bench.TANK, bench.kept);
    assertInstanceOf(CalibrationCurve.Identity.class, history.curve());
    assertFalse(history.undoable().isPresent());
  }

  private static void refused(CheckReply reply, String words) {
    assertFalse(reply.accepted());
    assertTrue(reply.words().contains(words), reply::words);
    assertEquals(List.of(), reply.evidence());
  }

  @Test
  void aSlipOfUnitIsAskedAboutBeforeItGoesOnRecord() {
    CheckSession session = bench.begin(Bench.instrument(new CalibrationCurve.Identity(), true, 2));
    bench.immerse(session);
    refused(session.typed(1413, 25, bench.now()), "if the display is in µS/cm, type 1.413");
    refused(session.typed(14.1, 25, bench.now()), "if the display is in CF, type 1.41");
    refused(session.typed(1e300, 25, bench.now()), "more than 10 million mS/cm makes no sense");
    assertEquals(List.of(), session.measured());
    assertEquals(Phase.SETTLING, session.phase());
  }

  @Test
  void saysAtTheProbeWhyReadingsAtRestGiveNoResult() {
    bench.celsius = 55;
    CheckSession session = bench.begin(Bench.plain());
    bench.immerse(session);
    for (int i = 0; i < 120; i++) {
      bench.wait(Duration.ofSeconds(1));
      CheckReply unused = session.reading(new ProbeReading(bench.stamp(), 2.3, bench.celsius));
    }
    assertTrue(session.settlingWords().contains("outside the 0 to 50 °C"), session::settlingWords);
    refused(session.temperature(new Thermometer(55, 0.2), bench.now()), "outside the 0 to 50 °C");
    bench.keep(session.temperature(new Thermometer(22, 0.2), bench.now()));
    assertFalse(session.settlingWords().contains("outside"), session::settlingWords);
    CheckReply unused = session.reading(new ProbeReading(bench.stamp(), 9e9, 22));
    assertTrue(session.settlingWords().contains("makes no sense"), session::settlingWords);
  }
}
