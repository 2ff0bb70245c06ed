package feedwitness.watch.drift;

/** The standard normal distribution, and what turns others into it. */
final class Normal {
  private static final double SQRT_TWO_PI = Math.sqrt(2 * Math.PI);

  private Normal() {}

  static double density(double x) {
    return Math.exp(-0.5 * x * x) / SQRT_TWO_PI;
  }

  /**
   * Probability below {@code x}. Series near zero, continued fraction in the tails; relative error
   * below 1e-12.
   */
  static double below(double x) {
    if (x > 0) {
      return 1 - below(-x);
    }
    double a = -x;
    if (a > 38) {
      return 0;
    }
    if (a < 3) {
      double term = a;
      double sum = a;
      for (int i = 1; i < 200 && term > sum * 1e-16; i++) {
        term *= a * a / (2 * i + 1);
        sum += term;
      }
      return 0.5 - density(a) * sum;
    }
    double fraction = 0;
    for (int i = 60; i > 0; i--) {
      fraction = i / (a + fraction);
    }
    return density(a) / (a + fraction);
  }

  /**
   * A value of Student's t with so many degrees of freedom as the normal deviate of the same
   * probability (Wallace 1959; within 0.02 down to 4 degrees of freedom).
   */
  static double ofStudent(double t, double freedom) {
    double size = Math.sqrt(freedom * Math.log1p(t * t / freedom));
    return Math.copySign(size * (8 * freedom + 1) / (8 * freedom + 3), t);
  }
}
