package feedwitness.measurement;

/**
 * What a measurement must know of its instrument; NaN where the maker states nothing.
 *
 * @param minMilliSiemensPerCm lower end of the rated range, mS/cm
 * @param maxMilliSiemensPerCm upper end, mS/cm
 * @param minCelsius lower end of the rated temperature range, °C
 * @param maxCelsius upper end, °C
 * @param resolutionMilliSiemensPerCm smallest step, mS/cm
 * @param accuracyPercent half-width of the stated error of conductivity, % of reading
 * @param temperatureAccuracyKelvin half-width of the stated error of temperature, K
 */
public record InstrumentLimits(
    double minMilliSiemensPerCm,
    double maxMilliSiemensPerCm,
    double minCelsius,
    double maxCelsius,
    double resolutionMilliSiemensPerCm,
    double accuracyPercent,
    double temperatureAccuracyKelvin) {

  /** Nothing is known. */
  public static final InstrumentLimits UNKNOWN =
      new InstrumentLimits(
          Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
}
