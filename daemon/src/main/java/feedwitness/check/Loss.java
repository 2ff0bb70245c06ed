package feedwitness.check;

import java.util.List;

/**
 * Whether a probe slowly loses sensitivity since the last cleaning or adjustment. Each error is
 * compared with the mean of all before it, in units of what checks scatter by (these differences
 * are independent however many there are), and what lies below by more than three quarters of a
 * unit is summed up; a sum of seven is sure. A healthy probe gets there once in some hundred
 * thousand checks (Siegmund's approximation); one that loses a unit a check does at the fifth.
 */
public enum Loss {
  SURE("sure"),
  LIKELY("likely"),
  NONE_SEEN("none seen"),
  CANT_TELL("can't tell");

  static final double ALLOWANCE = 0.75;
  static final double LIMIT = 7;
  private static final double LIKELY_LIMIT = 4;
  private static final int LEAST_POINTS = 3;

  private final String words;

  Loss(String words) {
    this.words = words;
  }

  /** For people. */
  public String words() {
    return words;
  }

  /** After the last of the points of one stretch. */
  static Loss of(List<ChartPoint> points) {
    double most = sum(points);
    if (most >= LIMIT) {
      return SURE;
    }
    if (points.size() < LEAST_POINTS) {
      return CANT_TELL;
    }
    return most >= LIKELY_LIMIT ? LIKELY : NONE_SEEN;
  }

  /** The running sum after the last point, unitless, ≥ 0. */
  static double sum(List<ChartPoint> points) {
    double sum = 0;
    double weights = 0;
    double mean = 0;
    for (ChartPoint point : points) {
      double own = variance(point, points.get(0));
      if (weights > 0) {
        double apart = (point.percent() - mean) / Math.sqrt(own + 1 / weights);
        sum = Math.max(0, sum - apart - ALLOWANCE);
      }
      double weight = 1 / own;
      mean = (mean * weights + point.percent() * weight) / (weights + weight);
      weights += weight;
    }
    return sum;
  }

  /** Another lot than at the beginning brings its own certificate in. */
  private static double variance(ChartPoint point, ChartPoint first) {
    double u =
        point.bottles().equals(first.bottles()) ? point.repeatPercent() : point.standardPercent();
    return u * u;
  }
}
