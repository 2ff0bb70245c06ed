package feedwitness.quality;

/**
 * How far neighbouring good readings usually lie apart, from the last 64 of them. Quantiles, so
 * that one in ten may be anything.
 */
final class Steps {
  private static final int HELD = 64;
  private static final int REAL_HELD = 256;
  private static final int REFRESH = 8;

  private final Quantiles all = new Quantiles(HELD);
  private final Quantiles real = new Quantiles(REAL_HELD);
  private long count;
  private long reals;
  private double high;
  private double typical;
  private double large;

  /** A step's size, ≥ 0; anything else, as from readings that are no conductivities, is no step. */
  void add(double step) {
    if (!(step >= 0)) {
      return;
    }
    all.add(step);
    count++;
    if (count < HELD / 4 || count % REFRESH == 0) {
      high = all.at(0.9);
    }
    if (step > 0) {
      real.add(step);
      reals++;
      if (reals < HELD / 4 || reals % REFRESH == 0) {
        typical = real.at(0.5);
        large = real.at(0.95);
      }
    }
  }

  /** The last so many steps and their quantiles. */
  private static final class Quantiles {
    private final double[] ring;
    private final Ranked ranked;
    private int next;

    Quantiles(int capacity) {
      ring = new double[capacity];
      ranked = new Ranked(capacity);
    }

    void add(double step) {
      if (ranked.size() == ring.length) {
        ranked.exchange(ring[next], step);
      } else {
        ranked.add(step);
      }
      ring[next] = step;
      next = next + 1 == ring.length ? 0 : next + 1;
    }

    double at(double part) {
      return ranked.at((int) (part * (ranked.size() - 1)));
    }
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
