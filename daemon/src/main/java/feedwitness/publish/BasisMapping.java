package feedwitness.publish;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.measurement.Basis;
import feedwitness.measurement.TemperatureCompensation;

/** What made a number, in words. */
final class BasisMapping {
  private BasisMapping() {}

  static PointJson.BasisJson map(Basis basis) {
    return new PointJson.BasisJson(
        basis.profile(), compensation(basis), calibration(basis.calibration()));
  }

  private static String compensation(Basis basis) {
    if (basis.indicatedAt25()) {
      return "by the instrument, to 25 °C";
    }
    if (basis.compensation() instanceof TemperatureCompensation.Linear linear) {
      return "linear %s %%/K at 25 °C".formatted(Numbers.conductivity(100 * linear.alpha()));
    }
    if (basis.compensation() instanceof TemperatureCompensation.NaturalWater) {
      return "natural water (ISO 7888), at 25 °C";
    }
    if (basis.compensation() instanceof TemperatureCompensation.Fitted fitted) {
      return "fitted to %s, at 25 °C".formatted(fitted.label());
    }
    return basis.compensation() instanceof TemperatureCompensation.Kcl
        ? "potassium chloride, at 25 °C"
        : "none: as at its own temperature";
  }

  private static String calibration(CalibrationCurve curve) {
    return curve instanceof CalibrationCurve.Linear linear
        ? "slope %s, offset %s mS/cm"
            .formatted(
                Numbers.conductivity(linear.slope()),
                Numbers.conductivity(linear.offsetMilliSiemensPerCm()))
        : "none recorded: as indicated";
  }
}
