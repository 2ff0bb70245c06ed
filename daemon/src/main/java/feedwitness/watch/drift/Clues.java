package feedwitness.watch.drift;

import feedwitness.watch.diagnosis.Evidence;

/**
 * What events tell about causes besides the share: how line and source agree in plain water, how
 * they part in temperature, when the barrel was filled, and whether air was seen.
 */
final class Clues {
  private static final double LEARNING = 0.1;
  private static final double FILL_WINDOW = 3 * 3600.0;

  private double usualPlain = Double.NaN;
  private double latestPlain = Double.NaN;
  private double latestPlainAt = Double.NEGATIVE_INFINITY;
  private double usualWarmer = Double.NaN;
  private double latestWarmer = Double.NaN;
  private double filledAt = Double.NEGATIVE_INFINITY;
  private boolean air;

  /** An event of plain water: the logarithm of line over source. */
  void plain(double ratio, double seconds, boolean normal) {
    latestPlain = ratio;
    latestPlainAt = seconds;
    if (normal) {
      usualPlain = follow(usualPlain, ratio);
    }
  }

  /** Line less source, K, while water flows; NaN if unknown. */
  void warmer(double kelvin, boolean normal) {
    latestWarmer = kelvin;
    if (normal && !Double.isNaN(kelvin)) {
      usualWarmer = follow(usualWarmer, kelvin);
    }
  }

  private static double follow(double usual, double now) {
    return Double.isNaN(usual) ? now : usual + LEARNING * (now - usual);
  }

  void air(boolean seen) {
    air = seen;
  }

  boolean airSeen() {
    return air;
  }

  void filled(double seconds) {
    filledAt = seconds;
  }

  /** All of it, for a change that began then. */
  Evidence about(
      double sizePercent,
      boolean gradual,
      boolean plain,
      double begun,
      double sourceShiftPercent,
      boolean sourceKnown,
      boolean learnt) {
    double plainShift =
        latestPlainAt >= begun ? 100 * Math.expm1(latestPlain - usualPlain) : Double.NaN;
    return new Evidence(
        sizePercent,
        gradual,
        plain,
        sourceKnown,
        sourceShiftPercent,
        plainShift,
        air,
        latestWarmer - usualWarmer,
        Math.abs(begun - filledAt) <= FILL_WINDOW,
        learnt,
        Evidence.Check.NONE,
        Evidence.Second.NONE);
  }

  void write(StateWriter out) {
    out.number(usualPlain).number(latestPlain).number(latestPlainAt).number(usualWarmer);
    out.number(latestWarmer).number(filledAt).truth(air);
  }

  void read(StateReader in) {
    usualPlain = in.number();
    latestPlain = in.number();
    latestPlainAt = in.number();
    usualWarmer = in.number();
    latestWarmer = in.number();
    filledAt = in.number();
    air = in.truth();
  }
}
