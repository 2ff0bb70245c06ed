package feedwitness.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.measurement.Contribution.Source;
import java.util.EnumSet;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class UncertaintyBudgetTest {
  private static final InstrumentLimits PROBE =
      new InstrumentLimits(0, 20, 0, 50, 0.001, 1, 0.3, 0.2);
  private static final TemperatureCompensation FEED =
      new TemperatureCompensation.Linear(0.0188, 0.0006);

  @Test
  void agreesWithMonteCarloWithinFivePercent() {
    Set<String> apart = new TreeSet<>();
    for (Cases.Case each : Cases.all()) {
      double budget = each.measured().standardUncertaintyMilliSiemensPerCm();
      double drawn = new MonteCarlo(20260601, 60_000).standardUncertainty(each);
      if (!(Math.abs(budget / drawn - 1) < 0.05)) {
        apart.add("%s: budget %s, drawn %s".formatted(each, budget, drawn));
      }
    }
    assertTrue(apart.isEmpty(), () -> String.join("\n", apart));
  }

  @Test
  void theLinesAddUpToExactlyWhatTheMeasurementCarries() {
    for (Cases.Case each : Cases.all()) {
      Measurement measured = each.measured();
      UncertaintyBudget budget = UncertaintyBudget.of(measured).orElseThrow();
      assertEquals(
          Double.doubleToLongBits(measured.standardUncertaintyMilliSiemensPerCm()),
          Double.doubleToLongBits(budget.standardUncertaintyMilliSiemensPerCm()));
      double sum = 0;
      for (Contribution line : budget.contributions()) {
        assertEquals(
            line.value() / line.distribution().divisor() * line.sensitivity(),
            line.milliSiemensPerCm());
        sum += line.milliSiemensPerCm() * line.milliSiemensPerCm();
      }
      assertEquals(measured.standardUncertaintyMilliSiemensPerCm(), Math.sqrt(sum));
    }
  }

  @Test
  void sensitivitiesAreTheSlopesOfTheFormulas() {
    for (Cases.Case each : Cases.all()) {
      UncertaintyBudget budget = UncertaintyBudget.of(each.measured()).orElseThrow();
      double step = 1e-4;
      double perKelvin = (at25(each, 0, step) - at25(each, 0, -step)) / (2 * step);
      double perIndicated = (at25(each, step, 0) - at25(each, -step, 0)) / (2 * step);
      assertEquals(perIndicated, line(budget, Source.INSTRUMENT).sensitivity(), 1e-6);
      assertEquals(perIndicated, line(budget, Source.NOISE).sensitivity(), 1e-6);
      assertEquals(perKelvin, line(budget, Source.TEMPERATURE_SENSOR).sensitivity(), 1e-5);
    }
  }

  private static double at25(Cases.Case each, double more, double warmer) {
    return new Cases.Case(each.milliSiemensPerCm() + more, each.celsius() + warmer, each.basis())
        .measured()
        .conductivity25MilliSiemensPerCm();
  }

  @Test
  void namesEverySourceOnce() {
    UncertaintyBudget budget = UncertaintyBudget.of(measure(1.5, 15, FEED, PROBE)).orElseThrow();
    assertEquals(
        EnumSet.allOf(Source.class),
        budget.contributions().stream().map(Contribution::source).collect(Collectors.toSet()));
    assertEquals(Source.values().length, budget.contributions().size());
  }

  @Test
  void assumesATemperatureSensorOfHalfAKelvinWhereTheMakerStatesNone() {
    InstrumentLimits silent = new InstrumentLimits(0, 20, 0, 50, 0.001, 1, Double.NaN);
    Contribution sensor =
        line(
            UncertaintyBudget.of(measure(1.5, 15, FEED, silent)).orElseThrow(),
            Source.TEMPERATURE_SENSOR);
    assertTrue(sensor.assumed());
    assertEquals(0.5, sensor.value());
  }

  @Test
  void countsNoTemperatureWhereTheInstrumentCompensates() {
    Basis basis = new Basis(Basis.RULES, "p", true, new CalibrationCurve.Identity(), FEED, PROBE);
    UncertaintyBudget budget =
        UncertaintyBudget.of(MeasurementChain.measure(Cases.indication(1.5, 5), basis))
            .orElseThrow();
    assertEquals(0, line(budget, Source.TEMPERATURE_SENSOR).milliSiemensPerCm());
    assertEquals(0, line(budget, Source.COMPENSATION).milliSiemensPerCm());
    assertFalse(line(budget, Source.TEMPERATURE_SENSOR).assumed());
  }

  @Test
  void aCalibrationKnownAlongALineIsSurestBetweenItsStandards() {
    CalibrationCurve curve = new CalibrationCurve.Linear(1, 0, 0.01, 0.014, -0.98);
    assertTrue(curve.standardUncertainty(1.4) < 0.004);
    assertTrue(curve.standardUncertainty(4) > 0.02);
  }

  @Test
  void thereIsNoBudgetWithoutAValueAt25Degrees() {
    Measurement cold = measure(1.5, Double.NaN, FEED, PROBE);
    assertTrue(UncertaintyBudget.of(cold).isEmpty());
  }

  private static Measurement measure(
      double milliSiemensPerCm,
      double celsius,
      TemperatureCompensation compensation,
      InstrumentLimits limits) {
    return MeasurementChain.measure(
        Cases.indication(milliSiemensPerCm, celsius),
        new Basis(Basis.RULES, "p", false, new CalibrationCurve.Identity(), compensation, limits));
  }

  private static Contribution line(UncertaintyBudget budget, Source source) {
    return budget.contributions().stream()
        .filter(line -> line.source() == source)
        .findFirst()
        .orElseThrow();
  }
}
