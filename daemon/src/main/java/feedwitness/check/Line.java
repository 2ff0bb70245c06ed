package feedwitness.check;

import java.util.List;

/**
 * Least-squares line through readings: slope per second, its standard error, mean, and standard
 * deviation about the line.
 */
record Line(double slope, double slopeStandardError, double mean, double residual) {

  /** Through three or more. */
  static Line through(List<Settling.Reading> points) {
    int n = points.size();
    double meanX = 0;
    double meanY = 0;
    for (Settling.Reading point : points) {
      meanX += point.seconds() / n;
      meanY += point.milliSiemensPerCm() / n;
    }
    double xx = 0;
    double xy = 0;
    for (Settling.Reading point : points) {
      double x = point.seconds() - meanX;
      xx += x * x;
      xy += x * (point.milliSiemensPerCm() - meanY);
    }
    double slope = xy / xx;
    double squares = 0;
    for (Settling.Reading point : points) {
      double off = point.milliSiemensPerCm() - meanY - slope * (point.seconds() - meanX);
      squares += off * off;
    }
    double residual = Math.sqrt(squares / (n - 2));
    return new Line(slope, residual / Math.sqrt(xx), meanY, residual);
  }
}
