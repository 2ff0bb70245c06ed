package feedwitness.check;

/** Student's t for 95 % on both sides. */
final class StudentT {
  private static final double[] SMALL = {
    12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228
  };

  private StudentT() {}

  /** For so many degrees of freedom, 1 or more. Beyond ten a series, within 0.2 %. */
  static double quantile95(int degrees) {
    if (degrees <= SMALL.length) {
      return SMALL[Math.max(1, degrees) - 1];
    }
    double z = 1.959964;
    double v = degrees;
    // Cornish–Fisher, Abramowitz and Stegun 26.7.5.
    return z
        + (z * z * z + z) / (4 * v)
        + (5 * Math.pow(z, 5) + 16 * z * z * z + 3 * z) / (96 * v * v);
  }
}
