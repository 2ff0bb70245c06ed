package feedwitness.engine;

import feedwitness.check.CheckSubject;
import feedwitness.check.ComparisonMade;
import feedwitness.check.Comparisons;
import feedwitness.check.PlainWaterWatch;
import feedwitness.measurement.Measurement;
import feedwitness.quality.Flags;
import feedwitness.quality.Quality;
import feedwitness.quality.QualityFlag;
import feedwitness.quantity.PointName;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** Lines beside their source, for the times when plain water runs. Guarded by its owner. */
final class PlainWaterLines {
  private record Line(PointName source, PlainWaterWatch watch) {}

  private final CheckPlan plan;
  private final Map<PointName, Line> lines = new HashMap<>();

  PlainWaterLines(CheckPlan plan) {
    this.plan = plan;
  }

  /** Another configuration; lines that stay with their source go on. */
  void settle(Site site) {
    Map<PointName, Line> fresh = new HashMap<>();
    for (MeasuringPoint point : site.points()) {
      if (point.probe().isPresent() && point.place() == MeasuringPoint.Place.LINE) {
        site.sourceOf(point).ifPresent(source -> fresh.put(point.name(), line(point, source)));
      }
    }
    lines.clear();
    lines.putAll(fresh);
  }

  private Line line(MeasuringPoint point, PointName source) {
    Line known = lines.get(point.name());
    return known != null && known.source.equals(source)
        ? known
        : new Line(
            source,
            new PlainWaterWatch(
                CheckSubject.probe(point.name()), source.text(), plan.tolerance(point.name())));
  }

  /** A reading; the comparison when a period has ended that was long enough. */
  Optional<ComparisonMade> heard(Measurement measurement) {
    if (!isUsable(measurement.flags())
        || Double.isNaN(measurement.conductivity25MilliSiemensPerCm())) {
      return Optional.empty();
    }
    Comparisons.Value25 value = Comparing.plainWater(measurement);
    for (Line line : lines.values()) {
      if (line.source.equals(measurement.point())) {
        line.watch.source(value);
      }
    }
    Line own = lines.get(measurement.point());
    return own == null ? Optional.empty() : own.watch.line(measurement.stamp(), value);
  }

  /** Far below what is usual is what plain water is, until the judge has got used to it. */
  private static boolean isUsable(Flags flags) {
    return flags.list().stream()
        .allMatch(
            flag -> flag == QualityFlag.LOW_HOLD || flag.quality().compareTo(Quality.UNKNOWN) <= 0);
  }
}
