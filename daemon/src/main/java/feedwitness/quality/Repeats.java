package feedwitness.quality;

/**
 * Whether a number has been repeated for longer than its sensor's habit. A fine sensor repeats
 * itself a few times; a coarse one may stay constant for a day, so the longest runs are remembered
 * for as long as the point lives.
 */
final class Repeats {
  /** A sensor whose steps are more than this part of its level is coarse. */
  static final double COARSE = 0.001;

  private static final int RUNS = 128;
  private static final int ENOUGH_RUNS = 24;
  private static final int LEAST = 20;
  private static final int HISTORY = 10;

  private final int[] ring = new int[RUNS];
  private long runs;
  private long readings;
  private int longest;
  private int secondLongest;
  private int run = 1;
  private double since = Double.NaN;
  private double last = Double.NaN;
  private double lastOther = Double.NaN;

  /** Adds a reading, or a pair of them that must both repeat; equality is exact on purpose. */
  void add(double seconds, double value, double other) {
    readings++;
    if (Double.compare(value, last) == 0 && Double.compare(other, lastOther) == 0) {
      run++;
      return;
    }
    if (!Double.isNaN(last)) {
      ring[(int) (runs % RUNS)] = run;
      runs++;
      if (run > longest) {
        secondLongest = longest;
        longest = run;
      } else {
        secondLongest = Math.max(secondLongest, run);
      }
    }
    last = value;
    lastOther = other;
    since = seconds;
    run = 1;
  }

  /** Forgets the present run: what follows does not continue it. */
  void interrupt() {
    last = Double.NaN;
    run = 1;
  }

  /** The number repeats itself three times as often as ever among the last runs. */
  boolean longerThanOfLate() {
    if (runs < ENOUGH_RUNS || run < LEAST) {
      return false;
    }
    for (int i = 0; i < Math.min(runs, RUNS); i++) {
      if (run < 3 * ring[i]) {
        return false;
      }
    }
    return true;
  }

  /**
   * The number repeats itself three times as often as ever, but for once, in a history at least
   * ten times as long.
   */
  boolean longerThanEver() {
    return runs >= 3 * ENOUGH_RUNS
        && run >= Math.max(LEAST, 3 * secondLongest)
        && readings >= (long) HISTORY * run;
  }

  /** Readings in the present run. */
  int run() {
    return run;
  }

  /** How long the present run has lasted, s. */
  double lasting(double seconds) {
    return seconds - since;
  }
}
