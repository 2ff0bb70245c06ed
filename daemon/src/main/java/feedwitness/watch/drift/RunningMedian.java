package feedwitness.watch.drift;

import java.util.Arrays;

/** Median of the last values. */
final class RunningMedian {
  private final double[] sorted;
  private final double[] ring;
  private int next;
  private int size;

  RunningMedian(int window) {
    sorted = new double[window];
    ring = new double[window];
  }

  void add(double value) {
    if (size == ring.length) {
      int at = Arrays.binarySearch(sorted, 0, size, ring[next]);
      System.arraycopy(sorted, at + 1, sorted, at, size - at - 1);
      size--;
    }
    int at = Arrays.binarySearch(sorted, 0, size, value);
    at = at < 0 ? -at - 1 : at;
    System.arraycopy(sorted, at, sorted, at + 1, size - at);
    sorted[at] = value;
    ring[next] = value;
    next = (next + 1) % ring.length;
    size++;
  }

  int size() {
    return size;
  }

  /** NaN without values. */
  double median() {
    return size == 0 ? Double.NaN : sorted[size / 2];
  }

  void clear() {
    size = 0;
    next = 0;
  }

  void write(StateWriter out) {
    out.whole(size);
    for (int i = size; i > 0; i--) {
      out.number(ring[(next + ring.length - i) % ring.length]);
    }
  }

  void read(StateReader in) {
    clear();
    int count = in.count(ring.length);
    for (int i = 0; i < count; i++) {
      add(in.number());
    }
  }
}
