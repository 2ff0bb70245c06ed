package feedwitness.check;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.measurement.Basis;
import feedwitness.measurement.InstrumentLimits;
import feedwitness.measurement.TemperatureCompensation;

/**
 * What a check must know of the probe or meter.
 *
 * @param basis calibration in use, limits, and whether it compensates by itself
 * @param percentPerKelvin coefficient with which it compensates by itself, %/K at 25 °C; NaN if
 *     unknown, then 2 ± 0.1 is assumed; not used if it does not compensate
 */
public record Instrument(Basis basis, double percentPerKelvin) {
  /** The habit of the trade. */
  static final double USUAL_PERCENT_PER_KELVIN = 2;

  /** Half-width about it where the coefficient is unknown: settings found are 1.9 to 2.1. */
  static final double USUAL_DOUBT_PERCENT_PER_KELVIN = 0.1;

  /** Half-width, K. */
  static final double ASSUMED_TEMPERATURE_ACCURACY_KELVIN = 0.5;

  private static final double ASSUMED_REPEATABILITY_PERCENT = 0.5;

  /** Of the finest displays in use; only where no resolution is stated. */
  private static final double ASSUMED_RESOLUTION_MILLISIEMENS_PER_CM = 0.001;

  /**
   * A meter in somebody's hand of which nothing is recorded but what its display shows.
   *
   * @param resolutionMilliSiemensPerCm last digit of the display, mS/cm; NaN if unknown
   * @param compensates whether it refers to 25 °C by itself
   * @param percentPerKelvin with which coefficient; NaN if unknown
   */
  public static Instrument handheld(
      double resolutionMilliSiemensPerCm, boolean compensates, double percentPerKelvin) {
    double unknown = Double.NaN;
    return new Instrument(
        new Basis(
            Basis.RULES,
            "typed",
            compensates,
            new CalibrationCurve.Identity(),
            new TemperatureCompensation.Kcl(),
            new InstrumentLimits(
                unknown, unknown, unknown, unknown, resolutionMilliSiemensPerCm, unknown, unknown)),
        percentPerKelvin);
  }

  /** The same with another calibration in use. */
  Instrument with(CalibrationCurve curve) {
    return new Instrument(
        new Basis(
            basis.rules(),
            basis.profile(),
            basis.indicatedAt25(),
            curve,
            basis.compensation(),
            basis.limits()),
        percentPerKelvin);
  }

  InstrumentLimits limits() {
    return basis.limits();
  }

  boolean at25() {
    return basis.indicatedAt25();
  }

  double alpha() {
    return (Double.isNaN(percentPerKelvin) ? USUAL_PERCENT_PER_KELVIN : percentPerKelvin) / 100;
  }

  boolean alphaAssumed() {
    return Double.isNaN(percentPerKelvin);
  }

  /** mS/cm. */
  double resolution() {
    double stated = limits().resolutionMilliSiemensPerCm();
    return Double.isNaN(stated) ? ASSUMED_RESOLUTION_MILLISIEMENS_PER_CM : stated;
  }

  /** Half-width, % of reading. */
  double repeatabilityPercent() {
    double stated = limits().repeatabilityPercent();
    return Double.isNaN(stated) ? ASSUMED_REPEATABILITY_PERCENT : stated;
  }

  /** Half-width, K. */
  double temperatureAccuracyKelvin() {
    double stated = limits().temperatureAccuracyKelvin();
    return Double.isNaN(stated) ? ASSUMED_TEMPERATURE_ACCURACY_KELVIN : stated;
  }

  boolean temperatureAssumed() {
    return Double.isNaN(limits().temperatureAccuracyKelvin());
  }
}
