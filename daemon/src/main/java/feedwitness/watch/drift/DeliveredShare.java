package feedwitness.watch.drift;

import feedwitness.solution.Answer;
import feedwitness.solution.StrengthCurve;
import java.util.Optional;

/** From the conductivity of line and source to what the mixer delivered, and back. */
public sealed interface DeliveredShare {

  /**
   * What was delivered, in a unit of its own that is proportional to stock per litre; 0 or less, or
   * NaN, if the line carries no feed.
   *
   * @param line mS/cm at 25 °C
   * @param source mS/cm at 25 °C; 0 if not known
   */
  double of(double line, double source);

  /** The line's conductivity for a share, mS/cm at 25 °C. */
  double line(double share, double source);

  /**
   * Proportional to the conductivity that feed added: needs no recipe, reads a sag 5 % too small.
   */
  record Added() implements DeliveredShare {
    @Override
    public double of(double line, double source) {
      return line - source;
    }

    @Override
    public double line(double share, double source) {
      return source + share;
    }
  }

  /**
   * Solved with the conductivity model for a known stock in a known water. What the source differs
   * from that water is taken off first.
   */
  final class Solved implements DeliveredShare {
    private static final int STEPS = 64;

    private final double water;
    private final double step;
    private final double[] strengths;

    private Solved(double water, double step, double[] strengths) {
      this.water = water;
      this.step = step;
      this.strengths = strengths;
    }

    /**
     * Tabulates a curve.
     *
     * @param maxShare largest share of the concentrate, within the curve
     * @return empty if the model refuses any of it
     */
    public static Optional<Solved> of(StrengthCurve curve, double maxShare) {
      double[] strengths = new double[STEPS + 1];
      for (int i = 0; i <= STEPS; i++) {
        if (!(curve.strength(maxShare * i / STEPS)
            instanceof Answer.Known<StrengthCurve.Strength> known)) {
          return Optional.empty();
        }
        strengths[i] = known.it().value();
      }
      return Optional.of(new Solved(strengths[0], maxShare / STEPS, strengths));
    }

    @Override
    public double of(double line, double source) {
      double strength = source > 0 ? line - source + water : line;
      int i = 0;
      while (i < STEPS - 1 && strengths[i + 1] < strength) {
        i++;
      }
      return step * (i + (strength - strengths[i]) / (strengths[i + 1] - strengths[i]));
    }

    @Override
    public double line(double share, double source) {
      int i = (int) Math.max(0, Math.min(STEPS - 1.0, share / step));
      double strength = strengths[i] + (share / step - i) * (strengths[i + 1] - strengths[i]);
      return source > 0 ? strength - water + source : strength;
    }
  }
}
