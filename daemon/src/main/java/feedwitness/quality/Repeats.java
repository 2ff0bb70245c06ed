package feedwitness.quality;

/**
 * Whether a number has been repeated for longer than its sensor's habit. A fine sensor repeats
 * itself a few times; a coarse one may stay constant for a day, so the longest runs are remembered
 * for as long as the point lives.
 */
final class Repeats {
  private static final int COARSE_RUN = 3;
  private static final double COARSE_SHARE = 0.2;
  private static final double COARSE_STUCK_SECONDS = 86_400;
  private static final int RUNS = 256;
  private static final int ENOUGH_RUNS = 24;
  private static final int LEAST = 20;
  private static final int HISTORY = 10;
  private static final double HISTORY_SECONDS = 86_400;
  private static final int FREAKS = 3;
  private static final int STUBBORN = 3;
  private static final int NOT_KNOWN = 0;

  private final int[] ring = new int[RUNS];
  private long runs;
  private long readings;
  private int repeated;
  private int longestOfLate = NOT_KNOWN;

  /** Longest first. */
  private final int[] longest = new int[FREAKS + 1];

  private int flagged;
  private boolean calledStuck;
  private double firstSeconds = Double.NaN;
  private int run = 1;
  private double since = Double.NaN;
  private long first;
  private double last = Double.NaN;
  private double lastOther = Double.NaN;

  /**
   * Adds a reading, or a pair of them that must both repeat; equality is exact on purpose.
   *
   * @param sound whether the sensor's habit may be learnt from the run that ends here
   */
  void add(long sequence, double seconds, double value, double other, boolean sound) {
    readings++;
    if (Double.compare(value, last) == 0 && Double.compare(other, lastOther) == 0) {
      run++;
      return;
    }
    if (!Double.isNaN(last) && sound && isHabit()) {
      int at = (int) (runs % RUNS);
      repeated += (run >= COARSE_RUN ? 1 : 0) - (ring[at] >= COARSE_RUN ? 1 : 0);
      ring[at] = run;
      runs++;
      longestOfLate = NOT_KNOWN;
      remember();
    }
    if (Double.isNaN(firstSeconds)) {
      firstSeconds = seconds;
    }
    calledStuck = false;
    last = value;
    lastOther = other;
    since = seconds;
    first = sequence;
    run = 1;
  }

  /** A run that was called stuck is no habit, unless that happens again and again. */
  private boolean isHabit() {
    if (!calledStuck) {
      return true;
    }
    flagged++;
    return flagged % STUBBORN == 0;
  }

  private void remember() {
    int length = run;
    for (int i = 0; i < longest.length; i++) {
      if (length > longest[i]) {
        int shorter = longest[i];
        longest[i] = length;
        length = shorter;
      }
    }
  }

  /** Forgets the present run: what follows does not continue it. */
  void interrupt() {
    last = Double.NaN;
    run = 1;
    calledStuck = false;
  }

  /** Whether the sensor is stuck, by the measure of its kind; once it is, until it moves. */
  boolean stuck(double seconds) {
    if (calledStuck || run < LEAST) {
      return calledStuck;
    }
    calledStuck =
        coarse()
            ? seconds - since >= COARSE_STUCK_SECONDS && longerThanEver(seconds)
            : longerThanOfLate();
    return calledStuck;
  }

  /** A coarse sensor often gives one number three times and more. */
  private boolean coarse() {
    return repeated > COARSE_SHARE * Math.min(runs, RUNS);
  }

  /** The number repeats itself three times as often as ever among the last runs. */
  private boolean longerThanOfLate() {
    if (runs < ENOUGH_RUNS || run < LEAST) {
      return false;
    }
    if (longestOfLate == NOT_KNOWN) {
      for (int length : ring) {
        longestOfLate = Math.max(longestOfLate, length);
      }
    }
    return run >= 3 * longestOfLate;
  }

  /**
   * The number repeats itself three times as often as ever, but for three runs that may be
   * anything, in a history of at least a day that is ten times as long. Lengths of runs in health
   * have a long tail: that much is exceeded once in some months.
   */
  boolean longerThanEver(double seconds) {
    if (!calledStuck) {
      calledStuck =
          runs >= 3 * ENOUGH_RUNS
              && run >= Math.max(LEAST, 3 * longest[FREAKS])
              && readings >= (long) HISTORY * run
              && seconds - firstSeconds >= HISTORY_SECONDS;
    }
    return calledStuck;
  }

  /** Readings in the present run. */
  int run() {
    return run;
  }

  /** Sequence of the first reading of the present run. */
  long first() {
    return first;
  }
}
