package feedwitness.engine;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.measurement.Basis;
import feedwitness.measurement.InstrumentLimits;
import feedwitness.measurement.TemperatureCompensation;
import feedwitness.profile.InstrumentFacts;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;

/** Which basis the measurements of a point have. */
final class Bases {
  /** Profile name of readings typed by a person. */
  static final String TYPED = "typed";

  /** How far linear coefficients of feeds scatter about the default, 1/K (standard uncertainty). */
  private static final double ALPHA_STANDARD_UNCERTAINTY = 0.0006;

  private Bases() {}

  /** For what the probe of a point says; for a point without one, as if typed at 25 °C. */
  static Basis ofProbe(MeasuringPoint point) {
    return point
        .probe()
        .map(
            mount -> {
              InstrumentFacts facts = mount.profile().instrument();
              return new Basis(
                  Basis.RULES,
                  mount.profile().name(),
                  facts.compensation() == InstrumentFacts.Compensation.TO_25,
                  new CalibrationCurve.Identity(),
                  compensation(point.compensation()),
                  limits(facts));
            })
        .orElseGet(() -> ofTyped(point, TypedReading.Compensated.TO_25));
  }

  /** For a reading of a handheld meter, of which nothing is known. */
  static Basis ofTyped(MeasuringPoint point, TypedReading.Compensated compensated) {
    return new Basis(
        Basis.RULES,
        TYPED,
        compensated == TypedReading.Compensated.TO_25,
        new CalibrationCurve.Identity(),
        compensation(point.compensation()),
        InstrumentLimits.UNKNOWN);
  }

  /** For readings brought in from a file, of whose instrument nothing is known. */
  static Basis ofImported(MeasuringPoint point, TypedReading.Compensated compensated) {
    return new Basis(
        Basis.RULES,
        Basis.IMPORTED,
        compensated == TypedReading.Compensated.TO_25,
        new CalibrationCurve.Identity(),
        compensation(point.compensation()),
        InstrumentLimits.UNKNOWN);
  }

  private static TemperatureCompensation compensation(CompensationChoice choice) {
    if (choice instanceof CompensationChoice.Linear linear) {
      return new TemperatureCompensation.Linear(
          linear.percentPerKelvin() / 100, ALPHA_STANDARD_UNCERTAINTY);
    }
    if (choice instanceof CompensationChoice.Iso7888) {
      return new TemperatureCompensation.NaturalWater();
    }
    return choice instanceof CompensationChoice.Kcl
        ? new TemperatureCompensation.Kcl()
        : new TemperatureCompensation.None();
  }

  private static InstrumentLimits limits(InstrumentFacts facts) {
    return new InstrumentLimits(
        facts.minMilliSiemensPerCm(),
        facts.maxMilliSiemensPerCm(),
        facts.minCelsius(),
        facts.maxCelsius(),
        facts.resolutionMilliSiemensPerCm(),
        facts.accuracyPercent(),
        facts.temperatureAccuracyKelvin());
  }
}
