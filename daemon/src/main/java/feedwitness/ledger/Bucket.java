package feedwitness.ledger;

import feedwitness.quality.Flags;
import java.time.Instant;

/**
 * What a stretch of time held at a point. Conductivities are at 25 °C in mS/cm over those samples
 * that have one; NaN if none has.
 *
 * @param start of the stretch (of the sample, if the course is not thinned)
 * @param readings samples with a conductivity
 * @param missing samples without
 * @param meanCelsius NaN if no sample has a temperature
 * @param flags all flags of all samples
 */
public record Bucket(
    Instant start,
    double meanMilliSiemensPerCm,
    double minMilliSiemensPerCm,
    double maxMilliSiemensPerCm,
    double meanCelsius,
    int readings,
    int missing,
    Flags flags) {}
