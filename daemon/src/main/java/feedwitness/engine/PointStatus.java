package feedwitness.engine;

import feedwitness.measurement.Measurement;
import feedwitness.site.MeasuringPoint;
import java.util.Optional;

/**
 * A point as it stands.
 *
 * @param latest last sample, with a reading or without
 * @param lastReading last sample that carried a conductivity; the same as {@code latest} when all
 *     is well
 */
public record PointStatus(
    MeasuringPoint point, Optional<Measurement> latest, Optional<Measurement> lastReading) {}
