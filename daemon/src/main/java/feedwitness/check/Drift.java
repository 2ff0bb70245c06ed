package feedwitness.check;

import java.time.Instant;
import java.util.List;

/**
 * How an error goes with time since the last cleaning or adjustment: a weighted straight line.
 *
 * @param percentPerDay negative where the probe reads ever lower
 * @param standardPercentPerDay its standard uncertainty
 * @param percentNow error on the line at the last point, %
 * @param points how many made it
 */
public record Drift(
    double percentPerDay, double standardPercentPerDay, double percentNow, int points) {
  /** Looks closer together than this tell scatter, not drift. */
  private static final double LEAST_DAYS = 0.5;

  /** Through two or more points of one stretch; fewer, or all in half a day, know no rate. */
  static Drift of(List<ChartPoint> points) {
    if (points.isEmpty()) {
      return new Drift(Double.NaN, Double.NaN, Double.NaN, 0);
    }
    Instant origin = points.get(0).at();
    double w = 0;
    double wx = 0;
    double wy = 0;
    for (ChartPoint point : points) {
      double weight = weight(point);
      w += weight;
      wx += weight * point.days(origin);
      wy += weight * point.percent();
    }
    double meanX = wx / w;
    double meanY = wy / w;
    double xx = 0;
    double xy = 0;
    for (ChartPoint point : points) {
      double x = point.days(origin) - meanX;
      xx += weight(point) * x * x;
      xy += weight(point) * x * (point.percent() - meanY);
    }
    if (!(points.get(points.size() - 1).days(origin) >= LEAST_DAYS)) {
      return new Drift(Double.NaN, Double.NaN, meanY, points.size());
    }
    double slope = xy / xx;
    double chi = 0;
    for (ChartPoint point : points) {
      double off = point.percent() - meanY - slope * (point.days(origin) - meanX);
      chi += weight(point) * off * off;
    }
    // Scatter beyond the budget widens the doubt; scatter below it is luck and narrows nothing.
    double birge = points.size() > 2 ? Math.max(1, Math.sqrt(chi / (points.size() - 2))) : 1;
    double last = points.get(points.size() - 1).days(origin);
    return new Drift(slope, birge / Math.sqrt(xx), meanY + slope * (last - meanX), points.size());
  }

  private static double weight(ChartPoint point) {
    return 1 / (point.repeatPercent() * point.repeatPercent());
  }

  /** Whether the rate differs from none by more than so many of its standard uncertainties. */
  boolean differs(double times) {
    return Math.abs(percentPerDay) > times * standardPercentPerDay;
  }
}
