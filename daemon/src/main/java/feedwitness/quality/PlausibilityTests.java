package feedwitness.quality;

/** Tests that need one reading only. */
public final class PlausibilityTests {
  /** Liquid water in a nursery is never outside these, °C. */
  static final double COLDEST_CELSIUS = -2;

  static final double HOTTEST_CELSIUS = 60;

  private PlausibilityTests() {}

  /**
   * Judges one reading; numbers are NaN where the instrument sent none.
   *
   * @param milliSiemensPerCm as indicated, mS/cm
   * @param celsius as indicated, °C
   */
  public static Flags judge(double milliSiemensPerCm, double celsius, Rated rated) {
    Flags flags = Flags.NONE;
    if (Double.isNaN(milliSiemensPerCm)) {
      flags = flags.with(QualityFlag.CONDUCTIVITY_MISSING);
    }
    if (milliSiemensPerCm == 0 && celsius == 0) {
      return flags.with(QualityFlag.BOTH_ZERO);
    }
    if (celsius < COLDEST_CELSIUS || celsius > HOTTEST_CELSIUS) {
      flags = flags.with(QualityFlag.TEMPERATURE_IMPOSSIBLE);
    } else if (celsius < rated.minCelsius() || celsius > rated.maxCelsius()) {
      flags = flags.with(QualityFlag.RANGE);
    }
    if (milliSiemensPerCm < rated.minMilliSiemensPerCm()
        || milliSiemensPerCm > rated.maxMilliSiemensPerCm()) {
      flags = flags.with(QualityFlag.RANGE);
    }
    return flags;
  }

  /** Rated range of the instrument; NaN where the maker states none. */
  public record Rated(
      double minMilliSiemensPerCm,
      double maxMilliSiemensPerCm,
      double minCelsius,
      double maxCelsius) {}
}
