package feedwitness.solution;

/**
 * Activity coefficients after Davies, with the ionic strength capped: log10 γ = −A z² (√I/(1+√I) −
 * 0.3 I) for ions, 0.1 I for neutral species. Above the cap they stay as they are at it, which
 * keeps the pairing of doubly charged ions bounded in stock solutions; it is one reason why this
 * speciation serves conductivity and not solubility.
 */
final class Activity {
  static final double SALTING = 0.1;

  /** Fading pairs fade no further above this ionic strength, mol/kg. */
  private static final double FADE_LIMIT = 10;

  /** −log10 γ of a single charge. */
  final double singleCharge;

  /** Ionic strength that the salting of neutral species goes by. */
  final double capped;

  /** Ionic strength that fading goes by. */
  final double fading;

  /**
   * @param slopeA Debye–Hückel A, (kg/mol)^½
   * @param ionicStrength mol/kg, at least 0
   * @param cap mol/kg
   */
  Activity(double slopeA, double ionicStrength, double cap) {
    capped = Math.min(ionicStrength, cap);
    fading = Math.min(ionicStrength, FADE_LIMIT);
    double root = Math.sqrt(capped);
    singleCharge = slopeA * (root / (1 + root) - 0.3 * capped);
  }
}
