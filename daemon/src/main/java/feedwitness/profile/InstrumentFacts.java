package feedwitness.profile;

/**
 * What is known of the instrument itself.
 *
 * @param compensation whether and how it refers conductivity to 25 °C before sending it
 * @param minMilliSiemensPerCm lower end of the rated conductivity range, mS/cm
 * @param maxMilliSiemensPerCm upper end, mS/cm
 * @param minCelsius lower end of the rated temperature range, °C
 * @param maxCelsius upper end, °C
 * @param resolutionMilliSiemensPerCm smallest step sent, mS/cm; NaN if unknown
 * @param accuracyPercent stated accuracy of conductivity, ± % of reading; NaN if unknown
 * @param temperatureAccuracyKelvin stated accuracy of temperature, ± K; NaN if unknown
 */
public record InstrumentFacts(
    Compensation compensation,
    double minMilliSiemensPerCm,
    double maxMilliSiemensPerCm,
    double minCelsius,
    double maxCelsius,
    double resolutionMilliSiemensPerCm,
    double accuracyPercent,
    double temperatureAccuracyKelvin) {

  /** What the instrument does about temperature. */
  public enum Compensation {
    /** Sends conductivity at the temperature of the solution: we compensate. */
    NONE,
    /** Already refers it to 25 °C: compensating again is the classic mistake. */
    TO_25
  }
}
