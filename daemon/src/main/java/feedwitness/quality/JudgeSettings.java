package feedwitness.quality;

/**
 * What a {@link QualityJudge} is told of its point; everything else it learns.
 *
 * @param resolutionMilliSiemensPerCm smallest step of the instrument, mS/cm; NaN if unknown
 * @param indicatedAt25 whether the instrument has already referred the indication to 25 °C
 * @param dryIsNormal whether the probe lies where there is often no water, as in a drain tray
 */
public record JudgeSettings(
    double resolutionMilliSiemensPerCm, boolean indicatedAt25, boolean dryIsNormal) {

  /** A point of which nothing is known. */
  public static final JudgeSettings UNKNOWN = new JudgeSettings(Double.NaN, false, false);
}
