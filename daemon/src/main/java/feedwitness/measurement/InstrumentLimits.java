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
 * @param repeatabilityPercent half-width within which repeated readings of one solution lie, % of
 *     reading
 */
public record InstrumentLimits(
    double minMilliSiemensPerCm,
    double maxMilliSiemensPerCm,
    double minCelsius,
    double maxCelsius,
    double resolutionMilliSiemensPerCm,
    double accuracyPercent,
    double temperatureAccuracyKelvin,
    double repeatabilityPercent) {

  /** Nothing is known. */
  public static final InstrumentLimits UNKNOWN =
      new InstrumentLimits(
          Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);

  /** Where the maker states no repeatability. */
  public InstrumentLimits(
      double minMilliSiemensPerCm,
      double maxMilliSiemensPerCm,
      double minCelsius,
      double maxCelsius,
      double resolutionMilliSiemensPerCm,
      double accuracyPercent,
      double temperatureAccuracyKelvin) {
    this(
        minMilliSiemensPerCm,
        maxMilliSiemensPerCm,
        minCelsius,
        maxCelsius,
        resolutionMilliSiemensPerCm,
        accuracyPercent,
        temperatureAccuracyKelvin,
        Double.NaN);
  }
}
