package feedwitness.quality;

/**
 * One reading as a {@link QualityJudge} sees it.
 *
 * @param sequence names the reading in what is said of it later; rises from reading to reading
 * @param seconds when it was taken, s, of any origin; a step back is taken as a pause
 * @param milliSiemensPerCm as indicated, mS/cm; NaN if there is none
 * @param celsius as indicated, °C; NaN if there is none
 * @param neighbourCelsius what a probe in the same water says, °C; NaN if there is none
 * @param known what {@link PlausibilityTests} already said of this reading
 */
public record Observation(
    long sequence,
    double seconds,
    double milliSiemensPerCm,
    double celsius,
    double neighbourCelsius,
    Flags known) {}
