package feedwitness.engine;

import feedwitness.measurement.Measurement;
import feedwitness.quality.Quality;
import feedwitness.quantity.Stamp;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import java.time.Duration;
import java.util.Optional;

/** Strength of the water before feed, mS/cm at 25 °C. */
final class SourceWater {
  /** Source water changes slowly: a probe may have been silent, a helper may measure monthly. */
  private static final Duration PROBE_AGE = Duration.ofDays(1);

  private static final Duration TYPED_AGE = Duration.ofDays(31);

  private SourceWater() {}

  /** For a point; NaN if it has no source, or the source was not measured lately. */
  static double of(LiveView view, Site site, MeasuringPoint point, Stamp now) {
    Optional<MeasuringPoint> source = site.sourceOf(point).flatMap(site::point);
    if (source.isEmpty()) {
      return Double.NaN;
    }
    Duration oldest = source.get().probe().isPresent() ? PROBE_AGE : TYPED_AGE;
    return view.point(source.get().name())
        .flatMap(PointStatus::lastReading)
        .filter(m -> m.flags().worst() != Quality.BAD)
        .filter(m -> age(m.stamp(), now).compareTo(oldest) <= 0)
        .map(Measurement::conductivity25MilliSiemensPerCm)
        .orElse(Double.NaN);
  }

  private static Duration age(Stamp then, Stamp now) {
    return then.boot() == now.boot()
        ? Duration.ofNanos(now.monotonicNanos() - then.monotonicNanos())
        : Duration.between(then.wall(), now.wall());
  }
}
