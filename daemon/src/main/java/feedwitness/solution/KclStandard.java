package feedwitness.solution;

/**
 * Potassium chloride of 0.01 mol/kg against temperature, relative to 25 °C: NIST values as printed
 * in the CRC Handbook, "Standard KCl solutions for calibrating conductivity cells" (Wu, Koch,
 * Pratt; Pure Appl. Chem. 73:1783, 2001), 0 to 50 °C. A cubic meets all twelve within 0.001 %.
 */
public final class KclStandard {
  public static final double MIN_CELSIUS = 0;
  public static final double MAX_CELSIUS = 50;

  private KclStandard() {}

  /** κ(T)/κ(25), unitless; {@code celsius} within the table, else meaningless. */
  public static double ratio(double celsius) {
    double d = celsius - 25;
    return 1 + d * (1.94395442e-2 + d * (4.53829769e-5 - d * 4.14915202e-7));
  }

  /** Slope of {@link #ratio} in 1/K. */
  public static double ratioPerKelvin(double celsius) {
    double d = celsius - 25;
    return 1.94395442e-2 + d * (2 * 4.53829769e-5 - d * 3 * 4.14915202e-7);
  }
}
