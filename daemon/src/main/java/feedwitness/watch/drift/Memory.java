package feedwitness.watch.drift;

/**
 * How much of what an event strays lives on in the next, and how much is new: a first-order
 * autoregression over pairs of events. The coefficient is taken rather too high, because too low is
 * what cries wolf.
 */
final class Memory {
  static final double MOST = 0.98;
  private static final double UNKNOWN = 0.3;
  private static final int LEAST_PAIRS = 8;

  /** So many of its standard errors the coefficient is taken too high. */
  private static final double UPWARD = 0.4;

  /** Mean of a squared standard normal clipped at 2.5. */
  private static final double CLIPPED_SQUARE = 0.9776;

  private final Moments[] moments = new Moments[Levels.MOST + 1];
  private double coefficient = UNKNOWN;
  private double innovation = Double.NaN;
  private double pairs;

  Memory() {
    for (int i = 0; i < moments.length; i++) {
      moments[i] = new Moments();
    }
  }

  /**
   * A pair of successive events.
   *
   * @param kind the strength both have, or {@link Levels#MOST} if they differ
   */
  void add(int kind, double earlier, double later, double keep) {
    moments[kind].add(earlier, later, keep);
    refresh();
  }

  private void refresh() {
    double before = 0;
    double cross = 0;
    double after = 0;
    double means = 0;
    pairs = 0;
    for (Moments one : moments) {
      if (one.weight() > 1) {
        pairs += one.weight();
        means++;
        before += one.earlierSquares();
        cross += one.products();
        after += one.laterSquares();
      }
    }
    if (pairs - means < LEAST_PAIRS) {
      coefficient = UNKNOWN;
      innovation = Double.NaN;
      return;
    }
    double plain = before > 0 ? Math.max(0, Math.min(MOST, cross / before)) : 0;
    double unbiased = plain + (1 + 3 * plain) / pairs;
    coefficient =
        Math.min(MOST, unbiased + UPWARD * Math.sqrt(Math.max(0, 1 - plain * plain) / pairs));
    double rest = after - 2 * coefficient * cross + coefficient * coefficient * before;
    innovation = Math.sqrt(Math.max(0, rest) / Math.max(1, pairs - means - 1) / CLIPPED_SQUARE);
  }

  /** Correlation of successive events, 0 to 0.98. */
  double coefficient() {
    return coefficient;
  }

  /** Standard deviation of what is new in an event; NaN while unknown. */
  double innovation() {
    return innovation;
  }

  double pairs() {
    return pairs;
  }

  void write(StateWriter out) {
    for (Moments one : moments) {
      one.write(out);
    }
  }

  void read(StateReader in) {
    for (Moments one : moments) {
      one.read(in);
    }
    refresh();
  }
}
