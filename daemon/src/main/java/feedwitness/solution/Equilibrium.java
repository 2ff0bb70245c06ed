package feedwitness.solution;

/**
 * Decimal logarithm of a formation constant against temperature: a0 + a1 T + a2/T + a3 log10 T +
 * a4/T² + a5 T², T in kelvin. The form of van 't Hoff with a constant enthalpy is the one with a0
 * and a2 alone.
 */
record Equilibrium(double a0, double a1, double a2, double a3, double a4, double a5) {
  private static final double REFERENCE_KELVIN = 298.15;

  /** No reaction: a component stands for itself. */
  static final Equilibrium NONE = new Equilibrium(0, 0, 0, 0, 0, 0);

  /**
   * @param logK25 at 25 °C
   * @param enthalpy kJ/mol
   */
  static Equilibrium vantHoff(double logK25, double enthalpy) {
    double slope = enthalpy * 1000 / (Constants.GAS * Constants.LN10);
    return new Equilibrium(logK25 + slope / REFERENCE_KELVIN, 0, -slope, 0, 0, 0);
  }

  /** log10 K at {@code kelvin}, whose decimal logarithm the caller has at hand. */
  double log10At(double kelvin, double log10Kelvin) {
    return a0 + a1 * kelvin + (a2 + a4 / kelvin) / kelvin + a3 * log10Kelvin + a5 * kelvin * kelvin;
  }
}
