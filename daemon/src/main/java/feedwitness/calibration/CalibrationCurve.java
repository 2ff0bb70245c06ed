package feedwitness.calibration;

/** Relation between indication and measured conductivity (VIM 4.31), mS/cm on both sides. */
public sealed interface CalibrationCurve {

  /** Calibrated conductivity in mS/cm for an indicated one in mS/cm; NaN stays NaN. */
  double apply(double indicatedMilliSiemensPerCm);

  /** d(calibrated)/d(indicated), unitless, for the uncertainty budget. */
  double slope();

  /**
   * Standard uncertainty of {@link #apply} at an indication, from the curve alone, mS/cm, ≥ 0: how
   * well slope and offset are known.
   */
  double standardUncertainty(double indicatedMilliSiemensPerCm);

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

    @Override
    public double standardUncertainty(double indicatedMilliSiemensPerCm) {
      return 0;
    }
  }

  /**
   * slope × indicated + offset.
   *
   * @param slope unitless, > 0
   * @param offsetMilliSiemensPerCm mS/cm
   * @param slopeStandardUncertainty unitless, ≥ 0
   * @param offsetStandardUncertainty mS/cm, ≥ 0
   * @param correlation of slope and offset, −1 to 1; usually near −1 where both come from one
   *     straight line through two standards
   */
  record Linear(
      double slope,
      double offsetMilliSiemensPerCm,
      double slopeStandardUncertainty,
      double offsetStandardUncertainty,
      double correlation)
      implements CalibrationCurve {
    public Linear {
      if (!(slope > 0) || !Double.isFinite(slope) || !Double.isFinite(offsetMilliSiemensPerCm)) {
        throw new IllegalArgumentException(
            "calibration slope %s and offset %s mS/cm are unusable"
                .formatted(slope, offsetMilliSiemensPerCm));
      }
      if (!(slopeStandardUncertainty >= 0 && slopeStandardUncertainty < Double.POSITIVE_INFINITY)
          || !(offsetStandardUncertainty >= 0
              && offsetStandardUncertainty < Double.POSITIVE_INFINITY)
          || !(correlation >= -1 && correlation <= 1)) {
        throw new IllegalArgumentException(
            "calibration uncertainties %s of the slope and %s mS/cm of the offset with correlation %s are unusable; they must be 0 or more, the correlation −1 to 1"
                .formatted(slopeStandardUncertainty, offsetStandardUncertainty, correlation));
      }
    }

    /** A curve whose own uncertainty is not known, and so not counted. */
    public Linear(double slope, double offsetMilliSiemensPerCm) {
      this(slope, offsetMilliSiemensPerCm, 0, 0, 0);
    }

    @Override
    public double apply(double indicatedMilliSiemensPerCm) {
      return slope * indicatedMilliSiemensPerCm + offsetMilliSiemensPerCm;
    }

    /** JCGM 100, 5.2.2 with both sensitivities: the indication for the slope, 1 for the offset. */
    @Override
    public double standardUncertainty(double indicatedMilliSiemensPerCm) {
      double ofSlope = indicatedMilliSiemensPerCm * slopeStandardUncertainty;
      double variance =
          ofSlope * ofSlope
              + offsetStandardUncertainty * offsetStandardUncertainty
              + 2 * correlation * ofSlope * offsetStandardUncertainty;
      // Rounding may leave a correlation of −1 a hair below zero.
      return Math.sqrt(Math.max(0, variance));
    }
  }
}
