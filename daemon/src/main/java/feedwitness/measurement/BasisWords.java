package feedwitness.measurement;

import feedwitness.calibration.CalibrationCurve;

/** What made a number, in a few words for people. */
public final class BasisWords {
  private BasisWords() {}

  /** How the value was referred to 25 °C. */
  public static String compensation(Basis basis) {
    return basis.indicatedAt25()
        ? "by the instrument, to 25 °C"
        : compensation(basis.compensation());
  }

  static String compensation(TemperatureCompensation compensation) {
    if (compensation instanceof TemperatureCompensation.Linear linear) {
      return "linear %s %%/K at 25 °C".formatted(Digits.of(100 * linear.alpha()));
    }
    if (compensation instanceof TemperatureCompensation.NaturalWater) {
      return "natural water (ISO 7888), at 25 °C";
    }
    if (compensation instanceof TemperatureCompensation.Fitted fitted) {
      return "fitted to %s, at 25 °C".formatted(fitted.label());
    }
    return compensation instanceof TemperatureCompensation.Kcl
        ? "potassium chloride, at 25 °C"
        : "none: as at its own temperature";
  }

  /** How the indication was corrected. */
  public static String calibration(CalibrationCurve curve) {
    return curve instanceof CalibrationCurve.Linear linear
        ? "slope %s, offset %s mS/cm"
            .formatted(Digits.of(linear.slope()), Digits.of(linear.offsetMilliSiemensPerCm()))
        : "none recorded: as indicated";
  }
}
