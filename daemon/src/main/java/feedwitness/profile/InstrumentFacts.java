package feedwitness.profile;

/**
 * What is known of the instrument itself.
 *
 * @param compensation whether and how it refers conductivity to 25 °C before sending it
 * @param minMilliSiemensPerCm lower end of the rated conductivity range, mS/cm, ≥ 0
 * @param maxMilliSiemensPerCm upper end, mS/cm, at most 2000
 * @param minCelsius lower end of the rated temperature range, °C, ≥ −50
 * @param maxCelsius upper end, °C, at most 200
 * @param resolutionMilliSiemensPerCm smallest step sent, mS/cm, > 0; NaN if unknown
 * @param accuracyPercent stated accuracy of conductivity, ± % of reading, > 0 to 100; NaN if
 *     unknown
 * @param temperatureAccuracyKelvin stated accuracy of temperature, ± K, > 0 to 50; NaN if unknown
 * @param repeatabilityPercent how far repeated readings of one solution scatter, ± % of reading, >
 *     0 to 100; NaN if unknown
 */
public record InstrumentFacts(
    Compensation compensation,
    double minMilliSiemensPerCm,
    double maxMilliSiemensPerCm,
    double minCelsius,
    double maxCelsius,
    double resolutionMilliSiemensPerCm,
    double accuracyPercent,
    double temperatureAccuracyKelvin,
    double repeatabilityPercent) {
  private static final double HIGHEST_MILLISIEMENS_PER_CM = 2000;
  private static final double LOWEST_CELSIUS = -50;
  private static final double HIGHEST_CELSIUS = 200;

  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException naming item, value and limit
   */
  public InstrumentFacts {
    if (!(minMilliSiemensPerCm >= 0
        && minMilliSiemensPerCm < maxMilliSiemensPerCm
        && maxMilliSiemensPerCm <= HIGHEST_MILLISIEMENS_PER_CM)) {
      throw new IllegalArgumentException(
          "rated conductivity %s to %s mS/cm is no range between 0 and %s mS/cm, lowest first"
              .formatted(minMilliSiemensPerCm, maxMilliSiemensPerCm, HIGHEST_MILLISIEMENS_PER_CM));
    }
    if (!(minCelsius >= LOWEST_CELSIUS
        && minCelsius < maxCelsius
        && maxCelsius <= HIGHEST_CELSIUS)) {
      throw new IllegalArgumentException(
          "rated temperature %s to %s °C is no range between %s and %s °C, lowest first"
              .formatted(minCelsius, maxCelsius, LOWEST_CELSIUS, HIGHEST_CELSIUS));
    }
    checkPositive("resolution", resolutionMilliSiemensPerCm, maxMilliSiemensPerCm, "mS/cm");
    checkPositive("accuracy", accuracyPercent, 100, "%");
    checkPositive("temperature accuracy", temperatureAccuracyKelvin, 50, "K");
    checkPositive("repeatability", repeatabilityPercent, 100, "%");
  }

  /** Where the maker states no repeatability. */
  public InstrumentFacts(
      Compensation compensation,
      double minMilliSiemensPerCm,
      double maxMilliSiemensPerCm,
      double minCelsius,
      double maxCelsius,
      double resolutionMilliSiemensPerCm,
      double accuracyPercent,
      double temperatureAccuracyKelvin) {
    this(
        compensation,
        minMilliSiemensPerCm,
        maxMilliSiemensPerCm,
        minCelsius,
        maxCelsius,
        resolutionMilliSiemensPerCm,
        accuracyPercent,
        temperatureAccuracyKelvin,
        Double.NaN);
  }

  private static void checkPositive(String item, double value, double limit, String unit) {
    if (!Double.isNaN(value) && !(value > 0 && value <= limit)) {
      throw new IllegalArgumentException(
          "%s %s %s is not above 0 and at most %s %s; leave it out if the manual does not state it"
              .formatted(item, value, unit, limit, unit));
    }
  }

  /** What the instrument does about temperature. */
  public enum Compensation {
    /** Sends conductivity at the temperature of the solution: we compensate. */
    NONE,
    /** Already refers it to 25 °C: compensating again is the classic mistake. */
    TO_25
  }
}
