package feedwitness.watch.drift;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** The last events and how far each strayed from its strength's mean, for size, shape and chart. */
final class Strayed {
  static final int MOST = 96;

  private static final int LEAST_OF_SLOPE = 4;

  private final double[] seconds = new double[MOST];
  private final double[] away = new double[MOST];
  private final int[] level = new int[MOST];
  private int next;
  private int size;

  void add(double when, double log, int strength) {
    seconds[next] = when;
    away[next] = log;
    level[next] = strength;
    next = (next + 1) % MOST;
    size = Math.min(MOST, size + 1);
  }

  int size() {
    return size;
  }

  /** {@code back} counts from 1, the latest. */
  double seconds(int back) {
    return seconds[at(back)];
  }

  double away(int back) {
    return away[at(back)];
  }

  int level(int back) {
    return level[at(back)];
  }

  private int at(int back) {
    return (next + MOST - back) % MOST;
  }

  /** Events at or after a time, as far as they are remembered. */
  int since(double when) {
    int count = 0;
    while (count < size && seconds(count + 1) >= when) {
      count++;
    }
    return count;
  }

  /** Mean of the last ones, each held within so much of the median of up to five. */
  double mean(int count, double most) {
    double middle = middle(Math.min(5, count));
    double sum = 0;
    for (int i = 1; i <= count; i++) {
      sum += Math.max(middle - most, Math.min(middle + most, away(i)));
    }
    return sum / count;
  }

  private double middle(int count) {
    double[] some = new double[count];
    for (int i = 0; i < count; i++) {
      some[i] = away(i + 1);
    }
    java.util.Arrays.sort(some);
    return count % 2 == 1 ? some[count / 2] : (some[count / 2] + some[count / 2 - 1]) / 2;
  }

  /**
   * The number of last events in which a step in that direction is sharpest: the likeliest place of
   * a change of level.
   *
   * @param after only events later than this
   */
  int sharpest(int direction, double after) {
    int best = 1;
    double most = 0;
    double sum = 0;
    for (int i = 1; i <= size && seconds(i) > after; i++) {
      sum += direction * away(i);
      double sharp = sum / Math.sqrt(i);
      if (sharp > most) {
        most = sharp;
        best = i;
      }
    }
    return best;
  }

  /**
   * Whether a straight slope since that many events ago explains them better than the sharpest step
   * among them.
   */
  boolean gradual(int count) {
    if (count < LEAST_OF_SLOPE) {
      return false;
    }
    double origin = seconds(count) - (seconds(1) - seconds(count)) / (count - 1);
    double sum = 0;
    double step = 0;
    double product = 0;
    double squares = 0;
    for (int i = 1; i <= count; i++) {
      sum += away(i);
      step = i == 1 ? 0 : Math.max(step, sum * sum / i);
      double passed = seconds(i) - origin;
      product += passed * away(i);
      squares += passed * passed;
    }
    return product * product / squares > step;
  }

  /** Takes a change of what is normal into account. */
  void shift(double[] by) {
    for (int i = 0; i < MOST; i++) {
      away[i] += by[level[i]];
    }
  }

  /** For a page, oldest first. */
  List<DriftStanding.Recent> recent(LineClock clock) {
    List<DriftStanding.Recent> recent = new ArrayList<>();
    for (int back = size; back > 0; back--) {
      recent.add(
          new DriftStanding.Recent(
              Instant.ofEpochMilli(clock.wallMillis(seconds(back))),
              100 * Math.expm1(away(back)),
              level(back)));
    }
    return recent;
  }

  void clear() {
    size = 0;
    next = 0;
  }

  void write(StateWriter out) {
    out.whole(size);
    for (int i = size; i > 0; i--) {
      out.number(seconds(i)).number(away(i)).whole(level(i));
    }
  }

  void read(StateReader in) {
    clear();
    int count = in.count(MOST);
    for (int i = 0; i < count; i++) {
      add(in.number(), in.number(), in.count(Levels.MOST - 1));
    }
  }
}
