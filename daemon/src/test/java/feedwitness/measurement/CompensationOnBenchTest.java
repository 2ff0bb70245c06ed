package feedwitness.measurement;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.CalibrationCurve;
import java.io.InputStream;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * A salt solution of constant strength (about 21.7 mS/cm, like sodium chloride) cooling from 29 to
 * 10 °C, recordings/SOURCES.md. Spread is highest less lowest value at 25 °C, as part of the mean.
 */
class CompensationOnBenchTest {
  private static final double STEADY = 0.007;

  /** The recorder's own coefficient is 1.91 %/K; 1.90 %/K is the best straight line. */
  @Test
  void aLineOf191PercentAKelvinHoldsTheValueSteadyWhileItCools() throws Exception {
    assertTrue(spread(linear(0.0191)) < STEADY);
    assertTrue(spread(linear(0.0190)) < spread(linear(0.0191)));
  }

  @Test
  void theKclStandardHoldsItSteadyAsWell() throws Exception {
    assertTrue(spread(new TemperatureCompensation.Kcl()) < STEADY);
  }

  /** The door for compensation that knows the solution: here it was fitted to the recording. */
  @Test
  void aFitToTheSolutionItselfIsTenTimesAsGood() throws Exception {
    assertTrue(
        spread(new TemperatureCompensation.Fitted("bench", 0.0196222, 4.898e-5, 0, 5, 35, 1e-4))
            < STEADY / 10);
  }

  /** Each is for another water: the choice matters, and is the grower's. */
  @Test
  void compensationForOtherSolutionsDoesNotHoldItSteady() throws Exception {
    assertEquals(0.0080, spread(linear(0.0188)), 0.0001, "nitrate feed");
    assertEquals(0.0232, spread(linear(0.02)), 0.0001, "the habit of the trade");
    assertEquals(0.0280, spread(new TemperatureCompensation.NaturalWater()), 0.0001, "ISO 7888");
    assertTrue(spread(new TemperatureCompensation.None()) > 0.3);
  }

  @Test
  void refusesAFitThatDoesNotRise() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new TemperatureCompensation.Fitted("odd", 0.02, -0.001, 0, 0, 50, 0));
    assertThrows(
        IllegalArgumentException.class,
        () -> new TemperatureCompensation.Fitted("a;b", 0.02, 0, 0, 0, 50, 0));
  }

  private static TemperatureCompensation linear(double alpha) {
    return new TemperatureCompensation.Linear(alpha, 0.0006);
  }

  private static double spread(TemperatureCompensation compensation) throws Exception {
    Basis basis =
        new Basis(
            Basis.RULES,
            "bench",
            false,
            new CalibrationCurve.Identity(),
            compensation,
            InstrumentLimits.UNKNOWN);
    DoubleSummaryStatistics values = new DoubleSummaryStatistics();
    DoubleSummaryStatistics warmth = new DoubleSummaryStatistics();
    for (String row : rows()) {
      String[] words = row.split(",", -1);
      double celsius = Double.parseDouble(words[1]);
      warmth.accept(celsius);
      values.accept(
          MeasurementChain.measure(
                  Cases.indication(Double.parseDouble(words[0]) / 1000, celsius), basis)
              .conductivity25MilliSiemensPerCm());
    }
    assertTrue(warmth.getMin() < 11 && warmth.getMax() > 28.5, warmth::toString);
    return (values.getMax() - values.getMin()) / values.getAverage();
  }

  private static List<String> rows() throws Exception {
    try (InputStream in =
        CompensationOnBenchTest.class.getResourceAsStream(
            "/recordings/bench_reference_excerpt.csv")) {
      assertTrue(in != null, "the excerpt is missing");
      return new String(in.readAllBytes(), UTF_8).lines().skip(1).toList();
    }
  }
}
