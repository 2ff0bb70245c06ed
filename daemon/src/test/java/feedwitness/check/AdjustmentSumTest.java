package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.calibration.StandardCourse;
import feedwitness.calibration.StandardSolution;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** One point, two points, undo. */
class AdjustmentSumTest {
  private static final double CELSIUS = 21;

  private static double conducts(StandardSolution standard, double celsius) {
    return assertInstanceOf(StandardCourse.Conducts.class, standard.course().at(celsius))
        .milliSiemensPerCm();
  }

  private static StandardResult result(
      StandardSolution standard, Instrument instrument, double indicated) {
    Settling.Settled settled =
        new Settling.Settled(indicated, CELSIUS, 0.002 * indicated, 0, 20, 60);
    return assertInstanceOf(
            StandardResult.Found.class, StandardResult.of(standard, instrument, settled, 3))
        .result();
  }

  private static AdjustmentSum.Proposed proposed(AdjustmentSum.Outcome outcome) {
    return assertInstanceOf(AdjustmentSum.Proposed.class, outcome, outcome::toString);
  }

  @Test
  void findsTheCellConstantInOneStandard() {
    Instrument instrument = Bench.plain();
    double indicated = 0.95 * conducts(Bench.MIDDLE, CELSIUS);
    AdjustmentSum.Proposed one =
        proposed(
            AdjustmentSum.of(instrument, List.of(result(Bench.MIDDLE, instrument, indicated))));
    assertEquals(CurveAdjusted.Method.ONE_POINT, one.method());
    assertEquals(1 / 0.95, one.curve().slope(), 1e-9);
    assertEquals(0, one.curve().offsetMilliSiemensPerCm(), 1e-12);
    assertEquals(conducts(Bench.MIDDLE, CELSIUS), one.curve().apply(indicated), 1e-9);
  }

  @Test
  void findsSlopeAndOffsetInTwo() {
    Instrument instrument = Bench.plain();
    StandardResult low = result(Bench.LOW, instrument, 0.96 * conducts(Bench.LOW, CELSIUS) + 0.03);
    StandardResult high =
        result(Bench.MIDDLE, instrument, 0.96 * conducts(Bench.MIDDLE, CELSIUS) + 0.03);
    AdjustmentSum.Proposed two = proposed(AdjustmentSum.of(instrument, List.of(low, high)));
    assertEquals(CurveAdjusted.Method.TWO_POINT, two.method());
    assertEquals(1 / 0.96, two.curve().slope(), 1e-9);
    assertEquals(-0.03 / 0.96, two.curve().offsetMilliSiemensPerCm(), 1e-9);
  }

  /**
   * The curve's own uncertainty at, between and beside the standards, against drawing the beakers.
   */
  @Test
  void knowsHowSureTheLineIs() {
    Instrument instrument = Bench.plain();
    StandardResult low = result(Bench.LOW, instrument, 0.96 * conducts(Bench.LOW, CELSIUS) + 0.03);
    StandardResult high =
        result(Bench.MIDDLE, instrument, 0.96 * conducts(Bench.MIDDLE, CELSIUS) + 0.03);
    CalibrationCurve.Linear curve =
        proposed(AdjustmentSum.of(instrument, List.of(low, high))).curve();
    Random random = new Random(16);
    double[] at = {low.indicated(), 1.8, high.indicated(), 0.5};
    double[] squares = new double[at.length];
    int draws = 40_000;
    for (int i = 0; i < draws; i++) {
      double common = low.commonPercent() / 100 * random.nextGaussian();
      double first =
          low.reference() * (1 + common + low.ownPercent() / 100 * random.nextGaussian());
      double second =
          high.reference() * (1 + common + high.ownPercent() / 100 * random.nextGaussian());
      double slope = (second - first) / (high.indicated() - low.indicated());
      for (int k = 0; k < at.length; k++) {
        double off = first + slope * (at[k] - low.indicated()) - curve.apply(at[k]);
        squares[k] += off * off / draws;
      }
    }
    for (int k = 0; k < at.length; k++) {
      double drawn = Math.sqrt(squares[k]);
      assertEquals(drawn, curve.standardUncertainty(at[k]), 0.05 * drawn);
    }
  }

  @Test
  void refusesStandardsTooCloseTogether() {
    Instrument instrument = Bench.plain();
    AdjustmentSum.Refused refused =
        assertInstanceOf(
            AdjustmentSum.Refused.class,
            AdjustmentSum.of(
                instrument,
                List.of(result(Bench.LOW, instrument, 1.3), result(Bench.LOW, instrument, 1.31))));
    assertTrue(refused.words().contains("at least 1.3 times apart"), refused::words);
  }

  @Test
  void refusesToGoFartherAndFartherFromTheMaker() {
    Instrument instrument =
        Bench.instrument(new CalibrationCurve.Linear(1.15, 0), false, Double.NaN);
    double indicated = 0.8 * conducts(Bench.MIDDLE, CELSIUS);
    AdjustmentSum.Refused refused =
        assertInstanceOf(
            AdjustmentSum.Refused.class,
            AdjustmentSum.of(instrument, List.of(result(Bench.MIDDLE, instrument, indicated))));
    assertTrue(refused.words().contains("together with earlier adjustments"), refused::words);
  }

  @Test
  void namesTheUsualCauseOfAFactor() {
    Instrument instrument = Bench.plain();
    double right = conducts(Bench.LOW, CELSIUS);
    for (double factor : new double[] {1000, 10, 0.1, 640}) {
      AdjustmentSum.Refused refused =
          assertInstanceOf(
              AdjustmentSum.Refused.class,
              AdjustmentSum.of(instrument, List.of(result(Bench.LOW, instrument, factor * right))));
      assertTrue(
          refused.words().contains(factor == 640 ? "ppm" : "the unit is mistaken"), refused::words);
    }
  }

  @Test
  void takesAnAdjustmentBackByANewRecord() {
    Bench bench = new Bench();
    bench.gain = 0.93;
    CheckSession session = bench.round(bench.begin(Bench.plain()));
    bench.keep(session.cleaned("the grower", "brush", bench.now()));
    bench.round(session);
    bench.keep(session.adjust("the grower", "tank-a1", bench.now()));
    ProbeHistory adjusted = ProbeHistory.of(Bench.TANK, bench.kept);
    CurveAdjusted last = adjusted.undoable().orElseThrow();
    bench.kept.add(
        AdjustmentSum.undo(last, "tank-a2", "the grower", bench.now(), Optional.empty()));
    ProbeHistory undone = ProbeHistory.of(Bench.TANK, bench.kept);
    assertInstanceOf(CalibrationCurve.Identity.class, undone.curve());
    assertEquals(2, undone.adjustments().size());
    assertEquals("tank-a1", undone.adjustments().get(1).undoes());
  }
}
