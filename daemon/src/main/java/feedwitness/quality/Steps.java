package feedwitness.quality;

import java.util.Arrays;

/**
 * How far neighbouring good readings usually lie apart, from the last 64 of them. Quantiles, so
 * that one in ten may be anything.
 */
final class Steps {
  private static final int HELD = 64;
  private static final int REAL_HELD = 256;
  private static final int REFRESH = 8;

  private final double[] all = new double[HELD];
  private final double[] real = new double[REAL_HELD];
  private final double[] sorted = new double[REAL_HELD];
  private long count;
  private long reals;
  private double high;
  private double typical;
  private double large;

  /** A step's size, ≥ 0. */
  void add(double step) {
    all[(int) (count % HELD)] = step;
    count++;
    if (count < HELD / 4 || count % REFRESH == 0) {
      high = quantile(all, count, 0.9);
    }
    if (step > 0) {
      real[(int) (reals % REAL_HELD)] = step;
      reals++;
      if (reals < HELD / 4 || reals % REFRESH == 0) {
        typical = quantile(real, reals, 0.5);
        large = quantile(real, reals, 0.95);
      }
    }
  }

  private double quantile(double[] ring, long filled, double part) {
    int size = (int) Math.min(filled, ring.length);
    System.arraycopy(ring, 0, sorted, 0, size);
    Arrays.sort(sorted, 0, size);
    return sorted[(int) (part * (size - 1))];
  }

  /** Nine in ten steps are at most this; 0 without any. */
  double high() {
    return high;
  }

  /** Median of those steps that are not zero: near the sensor's own step if that is coarse. */
  double typical() {
    return typical;
  }

  /** Of those that are not zero, 95 in 100 are at most this. */
  double large() {
    return large;
  }

  boolean known() {
    return count >= REFRESH;
  }
}
