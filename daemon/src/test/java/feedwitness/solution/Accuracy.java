package feedwitness.solution;

import java.util.List;
import java.util.Locale;

/** Median, 95th percentile (linear between ranks) and largest of |relative errors|, %. */
record Accuracy(int points, double median, double p95, double max) {

  static Accuracy of(List<MeasuredPoint> points) {
    double[] errors = points.stream().mapToDouble(MeasuredPoint::errorPercent).sorted().toArray();
    return new Accuracy(
        errors.length, percentile(errors, 0.5), percentile(errors, 0.95), percentile(errors, 1));
  }

  private static double percentile(double[] sorted, double share) {
    if (sorted.length == 0) {
      return Double.NaN;
    }
    double rank = share * (sorted.length - 1);
    int below = (int) rank;
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (rank - below) * (sorted[above] - sorted[below]);
  }

  /** A row of the table in the documentation. */
  String row(String label) {
    return String.format(
        Locale.ROOT, "| %s | %d | %.2f | %.2f | %.2f |", label, points, median, p95, max);
  }
}
