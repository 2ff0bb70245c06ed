package feedwitness.simulate;

import java.util.Random;

/** A value that strays from zero and comes back (Ornstein-Uhlenbeck). */
final class Wander {
  private final Random random;
  private final double sigma;
  private final double seconds;
  private double value;

  /** Standard deviation in the long run, and the time constant in seconds. */
  Wander(Random random, double sigma, double seconds) {
    this.random = random;
    this.sigma = sigma;
    this.seconds = seconds;
  }

  double value() {
    return value;
  }

  void step(double dt) {
    double kept = StrictMath.exp(-dt / seconds);
    value = value * kept + sigma * Math.sqrt(1 - kept * kept) * random.nextGaussian();
  }
}
