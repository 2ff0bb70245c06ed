package feedwitness.solution;

/**
 * Potassium chloride standards, each with the unit it was weighed in. The three families are kept
 * apart: the same 0.01 is 1.4082 mS/cm as mol/kg of water, 1.4083 as demal and 1.413 as mol/L.
 *
 * <p>mol/kg: NIST, as printed in the CRC Handbook, "Standard KCl solutions for calibrating
 * conductivity cells" (Pratt et al., Pure Appl. Chem. 73:1783, 2001), the water's own conductivity
 * taken off. Demal (71.1352, 7.41913, 0.745263 g in a kilogram of solution) and mol/L: the printed
 * value at 25 °C, with the NIST course of the same strength; printed laboratory tables of both
 * agree with that within 0.3 % over the stated temperatures.
 */
public enum KclSolution {
  MOLAL_0_01("0.01 mol/kg", 1.40823, Course.WEAK, 0, 50, 0.0005),
  MOLAL_0_1("0.1 mol/kg", 12.8246, Course.MIDDLE, 0, 50, 0.0005),
  MOLAL_1("1 mol/kg", 108.620, Course.STRONG, 0, 50, 0.0005),
  DEMAL_0_01("0.01 D", 1.4083, Course.WEAK, 15, 35, 0.001),
  DEMAL_0_1("0.1 D", 12.852, Course.MIDDLE, 15, 35, 0.001),
  DEMAL_1("1 D", 111.31, Course.STRONG, 15, 35, 0.001),
  MOLAR_0_01("0.01 mol/L", 1.413, Course.WEAK, 5, 30, 0.002),
  MOLAR_0_02("0.02 mol/L", 2.77, Course.WEAK, 5, 30, 0.003),
  MOLAR_0_1("0.1 mol/L", 12.88, Course.MIDDLE, 5, 35, 0.002);

  private final String label;
  private final double at25;
  private final Course course;
  private final double minCelsius;
  private final double maxCelsius;
  private final double relativeUncertainty;

  KclSolution(
      String label,
      double at25,
      Course course,
      double minCelsius,
      double maxCelsius,
      double relativeUncertainty) {
    this.label = label;
    this.at25 = at25;
    this.course = course;
    this.minCelsius = minCelsius;
    this.maxCelsius = maxCelsius;
    this.relativeUncertainty = relativeUncertainty;
  }

  /** Strength with its unit: {@code 0.01 mol/L}. */
  public String label() {
    return label;
  }

  /** mS/cm at 25 °C. */
  public double at25() {
    return at25;
  }

  /** °C. */
  public double minCelsius() {
    return minCelsius;
  }

  /** °C. */
  public double maxCelsius() {
    return maxCelsius;
  }

  /** Relative standard uncertainty of the printed value and its course, without the weighing. */
  public double relativeStandardUncertainty() {
    return relativeUncertainty;
  }

  /** Conductivity at {@code celsius}, or which limit it passes. */
  public Outcome at(double celsius) {
    return celsius >= minCelsius && celsius <= maxCelsius
        ? new Conductivity(at25 * course.ratio(celsius))
        : new OutOfRange(celsius, minCelsius, maxCelsius);
  }

  /** A temperature without data is an expected outcome. */
  public sealed interface Outcome {}

  /**
   * What the standard conducts.
   *
   * @param milliSiemensPerCm mS/cm
   */
  public record Conductivity(double milliSiemensPerCm) implements Outcome {}

  /** All in °C. */
  public record OutOfRange(double celsius, double minCelsius, double maxCelsius)
      implements Outcome {}

  /** κ(T)/κ(25) as a cubic through the twelve NIST temperatures, 0 to 50 °C. */
  private enum Course {
    /** 0.01 mol/kg; within 0.001 % of the table. */
    WEAK(1.94395442e-2, 4.53829769e-5, -4.14915202e-7),
    /** 0.1 mol/kg; within 0.001 %. */
    MIDDLE(1.90610663e-2, 4.04589396e-5, -3.95370588e-7),
    /** 1 mol/kg; within 0.01 %. */
    STRONG(1.75600011e-2, 2.88763981e-5, -3.48846538e-7);

    private final double first;
    private final double second;
    private final double third;

    Course(double first, double second, double third) {
      this.first = first;
      this.second = second;
      this.third = third;
    }

    double ratio(double celsius) {
      double d = celsius - 25;
      return 1 + d * (first + d * (second + d * third));
    }
  }
}
