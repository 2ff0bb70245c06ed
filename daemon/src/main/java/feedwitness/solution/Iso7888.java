package feedwitness.solution;

/**
 * Conductivity of natural waters against temperature after ISO 7888:1985: the factor f25 that
 * refers a conductivity to 25 °C. Made for waters of the calcium bicarbonate type of about 60 to
 * 1000 µS/cm; it over-corrects nitrate feeds by 5 % at 5 °C.
 *
 * <p>A polynomial through the printed table of the standard (198 values, 0 to 35.9 °C); it meets
 * every value within 0.06 %, half a unit of the last printed digit or little more.
 */
public final class Iso7888 {
  public static final double MIN_CELSIUS = 0;
  public static final double MAX_CELSIUS = 35.9;
  public static final double MIN_MILLI_SIEMENS_PER_CM = 0.06;
  public static final double MAX_MILLI_SIEMENS_PER_CM = 1;

  private Iso7888() {}

  /** κ(T)/κ(25), unitless; {@code celsius} within the table, else meaningless. */
  public static double ratio(double celsius) {
    return 0.5213760
        + celsius
            * (1.694997e-2
                + celsius * (9.967202e-5 + celsius * (-4.936518e-7 + celsius * 9.525596e-10)));
  }

  /** Slope of {@link #ratio} in 1/K. */
  public static double ratioPerKelvin(double celsius) {
    return 1.694997e-2
        + celsius * (2 * 9.967202e-5 + celsius * (-3 * 4.936518e-7 + celsius * 4 * 9.525596e-10));
  }

  /**
   * The factor f25 of the standard: κ(25) = f25 · κ(T).
   *
   * @param celsius 0 to 35.9 °C
   * @return unitless, or which temperature limit is passed
   */
  public static Outcome factor(double celsius) {
    return celsius >= MIN_CELSIUS && celsius <= MAX_CELSIUS
        ? new Factor(1 / ratio(celsius))
        : new OutOfRange(celsius, MIN_CELSIUS, MAX_CELSIUS);
  }

  /**
   * Whether the standard was made for water of this conductivity: natural water of 0.06 to 1 mS/cm
   * at 25 °C. Feed is not natural water, whatever its conductivity.
   */
  public static boolean madeFor(double milliSiemensPerCmAt25) {
    return milliSiemensPerCmAt25 >= MIN_MILLI_SIEMENS_PER_CM
        && milliSiemensPerCmAt25 <= MAX_MILLI_SIEMENS_PER_CM;
  }

  /** A temperature beyond the table is an expected outcome. */
  public sealed interface Outcome {}

  /**
   * f25.
   *
   * @param value unitless, 1 at 25 °C
   */
  public record Factor(double value) implements Outcome {}

  /** All in °C. */
  public record OutOfRange(double celsius, double minCelsius, double maxCelsius)
      implements Outcome {}
}
