package feedwitness.watch.drift;

/**
 * How long a one-sided cumulative sum runs before it signals by chance, on independent normal
 * residuals, clipped or not: the sum as a Markov chain over cells (Brook and Evans 1972). A pair of
 * two-sided sums is four one-sided ones that hardly ever signal together, so each gets four times
 * the run length wanted of all.
 */
final class RunLength {
  private static final int CELLS = 60;
  private static final int STEPS = 12;
  private static final double AROUND = 1.5;
  private static final double FINE = 0.005;
  private static final double LEAST_LIMIT = 0.2;
  private static final double MOST_LIMIT = 40;

  private RunLength() {}

  /** Mean number of residuals to a signal, begun at zero. */
  static double of(double allowance, double clip, double limit) {
    double width = 2 * limit / (2 * CELLS - 1);
    double[][] rows = new double[CELLS][CELLS + 1];
    for (int i = 0; i < CELLS; i++) {
      for (int j = 0; j < CELLS; j++) {
        double high = stepBelow((j - i + 0.5) * width, allowance, clip);
        double low = j == 0 ? 0 : stepBelow((j - i - 0.5) * width, allowance, clip);
        rows[i][j] = (i == j ? 1 : 0) - (high - low);
      }
      rows[i][CELLS] = 1;
    }
    return solveFirst(rows);
  }

  /** Probability that clipped residual less allowance is at most {@code x}. */
  private static double stepBelow(double x, double allowance, double clip) {
    double z = x + allowance;
    if (z >= clip) {
      return 1;
    }
    return z < -clip ? 0 : Normal.below(z);
  }

  /** First unknown of the equations; rows are used up. */
  private static double solveFirst(double[][] rows) {
    int n = rows.length;
    for (int k = n - 1; k > 0; k--) {
      double pivot = rows[k][k];
      for (int i = 0; i < k; i++) {
        double factor = rows[i][k] / pivot;
        if (factor != 0) {
          for (int j = 0; j < k; j++) {
            rows[i][j] -= factor * rows[k][j];
          }
          rows[i][n] -= factor * rows[k][n];
        }
      }
    }
    return rows[0][n] / rows[0][0];
  }

  /**
   * Limit at which a one-sided sum runs that long on average, from 0.2 to 40. Halved down: clipped
   * residuals make the run length rise in small stairs, on which quicker ways go astray.
   */
  static double limitFor(double allowance, double clip, double runLength) {
    double guess = siegmund(allowance, runLength);
    double low = Math.max(LEAST_LIMIT, guess - AROUND);
    double high = Math.min(MOST_LIMIT, guess + AROUND);
    while (high - low > FINE) {
      double middle = (low + high) / 2;
      if (of(allowance, clip, middle) > runLength) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return (low + high) / 2;
  }

  /** Limit by Siegmund's approximation (1985), not clipped: a place to begin. */
  private static double siegmund(double allowance, double runLength) {
    double target = 2 * allowance * allowance * runLength;
    double x = Math.log(target + 1);
    for (int i = 0; i < STEPS; i++) {
      x = Math.log(target + x + 1);
    }
    return Math.max(2 * LEAST_LIMIT, Math.min(MOST_LIMIT, x / (2 * allowance) - 1.166));
  }
}
