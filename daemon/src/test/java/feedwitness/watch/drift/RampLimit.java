package feedwitness.watch.drift;

import java.util.Random;

/**
 * How often a ramp of 1 % a day can be seen within a day and a half at all, by one who knows what
 * is normal, the scatter and the memory of events, at one false signal in 720 events.
 */
final class RampLimit {
  private static final int WITHIN = 36;
  private static final int BEFORE = 150;
  private static final double SMALL_SHARE = 0.65;

  private final double[] added = new double[WITHIN];
  private final double energy;

  /**
   * @param memory correlation of successive events, known
   */
  RampLimit(double memory) {
    double sum = 0;
    double before = 0;
    for (int i = 0; i < WITHIN; i++) {
      double now = Math.log(1 - 0.01 * (i + 1) / EventSeason.EVENTS_A_DAY) / EventSeason.SIGMA;
      added[i] = (now - memory * before) / Math.sqrt(1 - memory * memory);
      sum += added[i] * added[i];
      before = now;
    }
    energy = sum;
  }

  /** Share of ramps that a pair of sums sees in time. */
  double pair(double falseEvery, int repeats, long seed) {
    Random random = new Random(seed);
    CusumPair pair = new CusumPair(CusumPair.CLIP, falseEvery, SMALL_SHARE);
    int seen = 0;
    for (int i = 0; i < repeats; i++) {
      pair.reset();
      boolean found = false;
      for (int k = -BEFORE; k < WITHIN; k++) {
        boolean signal = pair.add(random.nextGaussian() + (k < 0 ? 0 : added[k]), k) != 0;
        found |= signal && k >= 0;
        if (signal) {
          pair.reset();
        }
      }
      seen += found ? 1 : 0;
    }
    return (double) seen / repeats;
  }

  /** Share seen by one who also looks for a ramp of just this slope and age. */
  double matched(double limit, int repeats, long seed) {
    Random random = new Random(seed);
    double[] last = new double[2 * WITHIN];
    int seen = 0;
    for (int i = 0; i < repeats; i++) {
      for (int k = 0; k < last.length; k++) {
        last[k] = random.nextGaussian() + (k < WITHIN ? 0 : added[k - WITHIN]);
      }
      boolean found = false;
      for (int end = WITHIN + 1; end <= last.length; end++) {
        found |= Math.abs(match(last, end)) > limit;
      }
      seen += found ? 1 : 0;
    }
    return (double) seen / repeats;
  }

  /** Events to a false signal of {@link #matched}. */
  double matchedFalseEvery(double limit, int signals, long seed) {
    Random random = new Random(seed);
    double[] last = new double[WITHIN];
    long events = 0;
    for (int found = 0; found < signals; events++) {
      System.arraycopy(last, 1, last, 0, WITHIN - 1);
      last[WITHIN - 1] = random.nextGaussian();
      if (Math.abs(match(last, WITHIN)) > limit) {
        found++;
        java.util.Arrays.fill(last, 0);
      }
    }
    return (double) events / signals;
  }

  private double match(double[] values, int end) {
    double sum = 0;
    for (int i = 0; i < WITHIN; i++) {
      sum += added[i] * values[end - WITHIN + i];
    }
    return sum / Math.sqrt(energy);
  }
}
