package feedwitness.quality;

/**
 * Whether a conductivity stays the same number while the temperature beside it goes further than it
 * ever did meanwhile. Of an instrument that does not refer to 25 °C that is strong evidence, about
 * 2 % being due for each kelvin, and it comes long before a coarse one has been constant for a day.
 * How far is learnt, so that an instrument which does refer, against what is said of it, is no
 * false alarm.
 */
final class Unmoved {
  private static final double LEAST_KELVIN = 1;
  private static final double TIMES = 3;
  private static final int FREAKS = 3;
  private static final int ENOUGH_RUNS = 72;
  private static final int LEAST_READINGS = 20;
  private static final double HISTORY_SECONDS = 86_400;

  /** Kelvin gone through during one number, farthest first. */
  private final double[] farthest = new double[FREAKS + 1];

  private long runs;
  private int run;
  private double last = Double.NaN;
  private double coldest;
  private double warmest;
  private double firstSeconds = Double.NaN;

  /**
   * Adds a reading; equality is exact on purpose.
   *
   * @param celsius believed to be right; NaN if there is none
   * @param sound whether the habit may be learnt from the run that ends here
   */
  void add(double seconds, double value, double celsius, boolean sound) {
    if (Double.isNaN(firstSeconds)) {
      firstSeconds = seconds;
    }
    if (value != last) {
      if (sound && run > 0) {
        runs++;
        remember(travel());
      }
      interrupt();
      last = value;
    }
    run++;
    if (!Double.isNaN(celsius)) {
      coldest = Math.min(coldest, celsius);
      warmest = Math.max(warmest, celsius);
    }
  }

  private void remember(double kelvin) {
    double farther = kelvin;
    for (int i = 0; i < farthest.length; i++) {
      double held = farthest[i];
      farthest[i] = Math.max(held, farther);
      farther = Math.min(held, farther);
    }
  }

  private double travel() {
    return Math.max(0, warmest - coldest);
  }

  /** Forgets the present run: what follows does not continue it. */
  void interrupt() {
    last = Double.NaN;
    run = 0;
    coldest = Double.POSITIVE_INFINITY;
    warmest = Double.NEGATIVE_INFINITY;
  }

  /** Whether the temperature went too far for that. */
  boolean stuck(double seconds) {
    return run >= LEAST_READINGS
        && runs >= ENOUGH_RUNS
        && seconds - firstSeconds >= HISTORY_SECONDS
        && travel() >= Math.max(LEAST_KELVIN, TIMES * farthest[FREAKS]);
  }
}
