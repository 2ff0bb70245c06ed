package feedwitness.calibration;

/** Relation between indication and measured conductivity (VIM 4.31), mS/cm on both sides. */
public sealed interface CalibrationCurve {

  /** Calibrated conductivity in mS/cm for an indicated one in mS/cm; NaN stays NaN. */
  double apply(double indicatedMilliSiemensPerCm);

  /** d(calibrated)/d(indicated), unitless, for the uncertainty budget. */
  double slope();

  /** No calibration recorded: the indication stands. */
  record Identity() implements CalibrationCurve {
    @Override
    public double apply(double indicatedMilliSiemensPerCm) {
      return indicatedMilliSiemensPerCm;
    }

    @Override
    public double slope() {
      return 1;
    }
  }

  /** slope × indicated + offset; slope unitless and > 0, offset in mS/cm. */
  record Linear(double slope, double offsetMilliSiemensPerCm) implements CalibrationCurve {
    public Linear {
      if (!(slope > 0) || !Double.isFinite(slope) || !Double.isFinite(offsetMilliSiemensPerCm)) {
        throw new IllegalArgumentException(
            "calibration slope %s and offset %s mS/cm are unusable"
                .formatted(slope, offsetMilliSiemensPerCm));
      }
    }

    @Override
    public double apply(double indicatedMilliSiemensPerCm) {
      return slope * indicatedMilliSiemensPerCm + offsetMilliSiemensPerCm;
    }
  }
}
