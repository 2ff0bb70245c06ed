package feedwitness.quality;

import java.util.Arrays;

/** What is usual here: the median of half-hourly means of good readings over a day of them. */
final class UsualLevel {
  private static final double BLOCK_SECONDS = 1800;
  private static final int BLOCKS = 48;
  private static final int ENOUGH = 4;
  private static final double CALM_RATIO = 1.1;
  private static final int DAYS = 3;
  private static final double NEAR = 0.1;

  private final double[] ring = new double[BLOCKS];
  private final double[] days = new double[DAYS];
  private int nextDay;
  private int sinceRemembered;
  private long count;
  private double blockStart = Double.NaN;
  private double sum;
  private int inBlock;
  private double median = Double.NaN;
  private double calmLevel = Double.NaN;

  void add(double seconds, double value) {
    if (!(seconds - blockStart < BLOCK_SECONDS && seconds >= blockStart)) {
      if (inBlock > 0) {
        push(sum / inBlock);
      }
      blockStart = seconds;
      sum = 0;
      inBlock = 0;
    }
    sum += value;
    inBlock++;
  }

  private void push(double mean) {
    ring[(int) (count % BLOCKS)] = mean;
    count++;
    int size = (int) Math.min(count, BLOCKS);
    if (size >= ENOUGH) {
      double[] sorted = Arrays.copyOf(ring, size);
      Arrays.sort(sorted);
      median = sorted[size / 2];
    }
    calmLevel = ofLastHours();
    remember();
  }

  /** Once in a day of good readings. */
  private void remember() {
    sinceRemembered++;
    if (sinceRemembered >= BLOCKS && !Double.isNaN(median)) {
      sinceRemembered = 0;
      days[nextDay] = median;
      nextDay = (nextDay + 1) % DAYS;
    }
  }

  /** Whether such a level was usual on one of the days remembered. */
  boolean was(double value) {
    for (double day : days) {
      if (day > 0 && Math.abs(value - day) <= NEAR * day) {
        return true;
      }
    }
    return false;
  }

  /** NaN until two hours of good readings are known. */
  double median() {
    return median;
  }

  /** Level of the last two hours if they were calm, else that of the day; NaN if unknown. */
  double calmLevel() {
    return calmLevel;
  }

  private double ofLastHours() {
    if (count < ENOUGH) {
      return median;
    }
    double[] late = new double[ENOUGH];
    for (int i = 0; i < ENOUGH; i++) {
      late[i] = ring[(int) ((count - 1 - i) % BLOCKS)];
    }
    Arrays.sort(late);
    return late[ENOUGH - 1] <= CALM_RATIO * late[0] ? late[ENOUGH / 2] : median;
  }

  /** Starts anew at another level. */
  void restart() {
    count = 0;
    inBlock = 0;
    blockStart = Double.NaN;
    sum = 0;
    median = Double.NaN;
    calmLevel = Double.NaN;
  }
}
