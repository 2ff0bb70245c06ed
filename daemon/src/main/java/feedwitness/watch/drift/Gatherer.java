package feedwitness.watch.drift;

import java.util.Arrays;

/**
 * Readings of one event, thinned evenly if there are many; their mean without the fifth that lies
 * furthest out on either side. Strokes of an injector are averaged, a spike is left out.
 */
final class Gatherer {
  private static final int MOST = 64;

  private final double[] logs = new double[MOST];
  private final double[] scratch = new double[MOST];
  private int stride = 1;
  private int seen;
  private int kept;
  private double uncertainty;
  private double celsius;
  private int warm;

  void clear() {
    stride = 1;
    seen = 0;
    kept = 0;
    uncertainty = 0;
    celsius = 0;
    warm = 0;
  }

  int readings() {
    return seen;
  }

  void add(double log, double standardUncertainty, double degrees) {
    uncertainty += standardUncertainty;
    if (!Double.isNaN(degrees)) {
      celsius += degrees;
      warm++;
    }
    if (seen++ % stride == 0) {
      if (kept == MOST) {
        thin();
        if ((seen - 1) % stride != 0) {
          return;
        }
      }
      logs[kept++] = log;
    }
  }

  private void thin() {
    for (int i = 0; i < MOST / 2; i++) {
      logs[i] = logs[2 * i];
    }
    kept = MOST / 2;
    stride *= 2;
  }

  /** Trimmed mean of the logarithms. */
  double middle() {
    System.arraycopy(logs, 0, scratch, 0, kept);
    Arrays.sort(scratch, 0, kept);
    int cut = kept / 5;
    double sum = 0;
    for (int i = cut; i < kept - cut; i++) {
      sum += scratch[i];
    }
    return sum / (kept - 2 * cut);
  }

  /** Mean standard uncertainty as it was given. */
  double uncertainty() {
    return uncertainty / seen;
  }

  /** Mean; NaN without any. */
  double celsius() {
    return warm == 0 ? Double.NaN : celsius / warm;
  }

  void write(StateWriter out) {
    out.whole(stride).whole(seen).whole(kept).number(uncertainty).number(celsius).whole(warm);
    for (int i = 0; i < kept; i++) {
      out.number(logs[i]);
    }
  }

  void read(StateReader in) {
    stride = Math.max(1, in.count(Integer.MAX_VALUE));
    seen = in.count(Integer.MAX_VALUE);
    kept = in.count(MOST);
    uncertainty = in.number();
    celsius = in.number();
    warm = in.count(Integer.MAX_VALUE);
    for (int i = 0; i < kept; i++) {
      logs[i] = in.number();
    }
  }
}
