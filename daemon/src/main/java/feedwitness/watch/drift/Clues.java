package feedwitness.watch.drift;

import feedwitness.watch.diagnosis.Evidence;
import java.util.List;

/**
 * What events tell about causes besides the share: how line and source agree in plain water, how
 * they part in temperature, when the barrel was filled, and whether air was seen.
 */
final class Clues {
  private static final double LEARNING = 0.1;
  private static final double LEAST_SIZE = 0.02;

  /** The change parted the two probes by less of its size than this: they agree. */
  private static final double ONE_OF_THREE = 1.0 / 3;

  private static final List<Evidence.Check> CHECKS = List.of(Evidence.Check.values());
  private static final double FILL_WINDOW = 3 * 3600.0;

  private double usualPlain = Double.NaN;
  private double latestPlain = Double.NaN;
  private double latestPlainAt = Double.NEGATIVE_INFINITY;
  private double usualWarmer = Double.NaN;
  private double latestWarmer = Double.NaN;
  private double filledAt = Double.NEGATIVE_INFINITY;
  private boolean air;
  private double usualSecond = Double.NaN;
  private double latestSecond = Double.NaN;
  private double latestSecondAt = Double.NEGATIVE_INFINITY;
  private Evidence.Check check = Evidence.Check.NONE;
  private double checkedAt = Double.NEGATIVE_INFINITY;

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

  /**
   * What a second probe in the same liquid says of an event: the logarithm of its share over ours.
   */
  void second(double ratio, double seconds, boolean normal) {
    latestSecond = ratio;
    latestSecondAt = seconds;
    if (normal) {
      usualSecond = follow(usualSecond, ratio);
    }
  }

  /** The line's probe was checked in a standard. */
  void checked(Evidence.Check made, double seconds) {
    check = made;
    checkedAt = seconds;
  }

  private Evidence.Second second(double sizePercent, double begun) {
    double size = Math.log1p(Math.max(-99, sizePercent) / 100);
    double parted = usualSecond - latestSecond;
    if (!(latestSecondAt >= begun) || Double.isNaN(parted) || !(Math.abs(size) > LEAST_SIZE)) {
      return Evidence.Second.NONE;
    }
    double part = parted / size;
    if (part < ONE_OF_THREE) {
      return Evidence.Second.AGREES;
    }
    return part > 2 * ONE_OF_THREE ? Evidence.Second.DISAGREES : Evidence.Second.NONE;
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
        checkedAt >= begun ? check : Evidence.Check.NONE,
        second(sizePercent, begun));
  }

  void write(StateWriter out) {
    out.number(usualPlain).number(latestPlain).number(latestPlainAt).number(usualWarmer);
    out.number(latestWarmer).number(filledAt).truth(air);
    out.number(usualSecond).number(latestSecond).number(latestSecondAt);
    out.choice(check, CHECKS).number(checkedAt);
  }

  void read(StateReader in) {
    usualPlain = in.number();
    latestPlain = in.number();
    latestPlainAt = in.number();
    usualWarmer = in.number();
    latestWarmer = in.number();
    filledAt = in.number();
    air = in.truth();
    usualSecond = in.number();
    latestSecond = in.number();
    latestSecondAt = in.number();
    check = in.choice(CHECKS);
    checkedAt = in.number();
  }
}
