package feedwitness.quality;

/**
 * Numbers kept in order of size as they come and go, so that any quantile is a look into an array.
 * Adding finds its place by halving and moves what is greater by one: for the few hundred held here
 * faster than any tree, and nothing is allocated.
 */
final class Ranked {
  private final double[] sorted;
  private int size;

  Ranked(int capacity) {
    sorted = new double[capacity];
  }

  /** One more; the capacity must not be used up. No number ranks above all others. */
  void add(double number) {
    double value = ranking(number);
    int at = place(value);
    System.arraycopy(sorted, at, sorted, at + 1, size - at);
    sorted[at] = value;
    size++;
  }

  /** Puts one in the place of another that is held. */
  void exchange(double leaving, double coming) {
    double held = ranking(leaving);
    double value = ranking(coming);
    if (held == value) {
      return;
    }
    int from = place(held);
    int to = place(value);
    if (to > from) {
      to--;
      System.arraycopy(sorted, from + 1, sorted, from, to - from);
    } else {
      System.arraycopy(sorted, to, sorted, to + 1, from - to);
    }
    sorted[to] = value;
  }

  private static double ranking(double number) {
    return Double.isNaN(number) ? Double.POSITIVE_INFINITY : number;
  }

  /** How many are less: where the number stands, or would. */
  private int place(double value) {
    int from = 0;
    int to = size;
    while (from < to) {
      int middle = (from + to) >>> 1;
      if (sorted[middle] < value) {
        from = middle + 1;
      } else {
        to = middle;
      }
    }
    return from;
  }

  void clear() {
    size = 0;
  }

  int size() {
    return size;
  }

  /** {@code rank} from 0, the least, to below {@link #size()}. */
  double at(int rank) {
    return sorted[rank];
  }

  /** How many different numbers are held. */
  int distinct() {
    int distinct = 0;
    for (int i = 0; i < size; i++) {
      distinct += i == 0 || sorted[i] != sorted[i - 1] ? 1 : 0;
    }
    return distinct;
  }
}
