package feedwitness.engine;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.measurement.Basis;
import feedwitness.measurement.InstrumentLimits;
import feedwitness.measurement.TemperatureCompensation;
import feedwitness.profile.InstrumentFacts;
import feedwitness.site.MeasuringPoint;

/** Which basis the measurements of a point have. */
final class Bases {
  /** Profile name of readings typed by a person. */
  static final String TYPED = "typed";

  private Bases() {}

  /** The same with another compensation. */
  static Basis with(Basis usual, TemperatureCompensation compensation) {
    return new Basis(
        usual.rules(),
        usual.profile(),
        usual.indicatedAt25(),
        usual.calibration(),
        compensation,
        usual.limits());
  }

  /** The same with another calibration. */
  static Basis with(Basis usual, CalibrationCurve curve) {
    return new Basis(
        usual.rules(),
        usual.profile(),
        usual.indicatedAt25(),
        curve,
        usual.compensation(),
        usual.limits());
  }

  /** For what the probe of a point says; for a point without one, as if typed at 25 °C. */
  static Basis ofProbe(MeasuringPoint point, TemperatureCompensation compensation) {
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
                  compensation,
                  limits(facts));
            })
        .orElseGet(() -> ofTyped(TypedReading.Compensated.TO_25, compensation));
  }

  /** For a reading of a handheld meter, of which nothing is known. */
  static Basis ofTyped(TypedReading.Compensated compensated, TemperatureCompensation compensation) {
    return new Basis(
        Basis.RULES,
        TYPED,
        compensated == TypedReading.Compensated.TO_25,
        new CalibrationCurve.Identity(),
        compensation,
        InstrumentLimits.UNKNOWN);
  }

  /** For readings brought in from a file, of whose instrument nothing is known. */
  static Basis ofImported(MeasuringPoint point, TypedReading.Compensated compensated) {
    return new Basis(
        Basis.RULES,
        Basis.IMPORTED,
        compensated == TypedReading.Compensated.TO_25,
        new CalibrationCurve.Identity(),
        SiteCompensation.of(point.compensation()),
        InstrumentLimits.UNKNOWN);
  }

  private static InstrumentLimits limits(InstrumentFacts facts) {
    return new InstrumentLimits(
        facts.minMilliSiemensPerCm(),
        facts.maxMilliSiemensPerCm(),
        facts.minCelsius(),
        facts.maxCelsius(),
        facts.resolutionMilliSiemensPerCm(),
        facts.accuracyPercent(),
        facts.temperatureAccuracyKelvin(),
        facts.repeatabilityPercent());
  }
}
