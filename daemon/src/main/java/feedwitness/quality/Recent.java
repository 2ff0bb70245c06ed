package feedwitness.quality;

import java.util.Arrays;

/** The last few readings: a ring. */
final class Recent {
  private final long[] sequences;
  private final double[] seconds;
  private final double[] values;
  private final double[] sorted;
  private int next;
  private int size;

  Recent(int capacity) {
    sequences = new long[capacity];
    seconds = new double[capacity];
    values = new double[capacity];
    sorted = new double[capacity];
  }

  void add(long sequence, double second, double value) {
    sequences[next] = sequence;
    seconds[next] = second;
    values[next] = value;
    next = (next + 1) % values.length;
    size = Math.min(size + 1, values.length);
  }

  void clear() {
    size = 0;
  }

  int size() {
    return size;
  }

  boolean full() {
    return size == values.length;
  }

  /** {@code back} = 0 is the latest. */
  double value(int back) {
    return values[at(back)];
  }

  long sequence(int back) {
    return sequences[at(back)];
  }

  /** From the oldest held to the latest, s. */
  double span() {
    return size == 0 ? 0 : seconds[at(0)] - seconds[at(size - 1)];
  }

  /** NaN if empty. */
  double median() {
    return quantile(0.5);
  }

  /** {@code part} from 0 (least) to 1 (greatest); NaN if empty. */
  double quantile(double part) {
    if (size == 0) {
      return Double.NaN;
    }
    for (int back = 0; back < size; back++) {
      sorted[back] = value(back);
    }
    Arrays.sort(sorted, 0, size);
    return sorted[(int) Math.round(part * (size - 1))];
  }

  /** How many different values are held. */
  int distinct() {
    quantile(0);
    int distinct = 0;
    for (int i = 0; i < size; i++) {
      distinct += i == 0 || sorted[i] != sorted[i - 1] ? 1 : 0;
    }
    return distinct;
  }

  private int at(int back) {
    return Math.floorMod(next - 1 - back, values.length);
  }
}
