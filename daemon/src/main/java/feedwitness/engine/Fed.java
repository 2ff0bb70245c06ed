package feedwitness.engine;

import feedwitness.check.CheckSubject;
import feedwitness.quantity.Stamp;
import feedwitness.site.Band;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import feedwitness.site.StrengthOf;
import java.util.List;
import java.util.Optional;

/**
 * Weakest and strongest that is fed at a point, so that standards can be around it.
 *
 * @param low mS/cm at 25 °C; NaN if unknown
 * @param high likewise
 */
record Fed(double low, double high) {
  private static final Fed UNKNOWN = new Fed(Double.NaN, Double.NaN);

  /** By the strengths that are named for the point; else by its limits. */
  static Fed at(LiveView view, CheckSubject subject, Stamp now) {
    Site site = view.site();
    Optional<MeasuringPoint> point =
        site.point(subject.name()).filter(p -> subject.kind() == CheckSubject.Kind.PROBE);
    if (point.isEmpty() || !FeedingBook.isFed(point.get())) {
      return UNKNOWN;
    }
    double source = SourceWater.of(view, site, point.get(), now);
    List<Double> fed =
        site.strengths().stream()
            .filter(each -> each.point().map(subject.name()::equals).orElse(true))
            .map(each -> each.milliSiemensPerCm() + (each.of() == StrengthOf.ADDED ? source : 0))
            .filter(each -> !each.isNaN())
            .sorted()
            .toList();
    if (!fed.isEmpty()) {
      return new Fed(fed.get(0), fed.get(fed.size() - 1));
    }
    Band band = point.get().limits().conductivity();
    return point.get().limits().of() == StrengthOf.TOTAL
        ? new Fed(band.low(), band.high())
        : UNKNOWN;
  }
}
