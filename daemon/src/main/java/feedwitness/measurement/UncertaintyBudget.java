package feedwitness.measurement;

/**
 * Combines what is known of the parts (JCGM 100, 5.1.2, uncorrelated). Stated accuracies are
 * half-widths of rectangular distributions (÷ √3), a resolution is a full width (÷ √12).
 */
final class UncertaintyBudget {
  private UncertaintyBudget() {}

  /**
   * Standard uncertainty of the conductivity at 25 °C in mS/cm; NaN where the instrument's accuracy
   * is unknown: a budget without its main part would flatter.
   *
   * @param factor compensation factor, unitless
   * @param perKelvin its slope, 1/K
   */
  static double combine(
      double indicated,
      double calibrated,
      double celsius,
      double factor,
      double perKelvin,
      Basis basis) {
    InstrumentLimits limits = basis.limits();
    double slope = basis.calibration().slope();
    double instrument = factor * slope * indicated * limits.accuracyPercent() / 100 / Math.sqrt(3);
    double resolution =
        factor * slope * orZero(limits.resolutionMilliSiemensPerCm()) / Math.sqrt(12);
    double temperature =
        calibrated * perKelvin * orZero(limits.temperatureAccuracyKelvin()) / Math.sqrt(3);
    double compensation =
        perKelvin == 0
            ? 0
            : calibrated * factor * basis.compensation().relativeStandardUncertainty(celsius);
    return Math.sqrt(
        instrument * instrument
            + resolution * resolution
            + temperature * temperature
            + compensation * compensation);
  }

  private static double orZero(double possiblyUnknown) {
    return Double.isNaN(possiblyUnknown) ? 0 : possiblyUnknown;
  }
}
