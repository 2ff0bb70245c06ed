package feedwitness.quality;

/** The last few readings: a ring. */
final class Recent {
  private final long[] sequences;
  private final double[] seconds;
  private final double[] values;
  private final Ranked ranked;

  /** Many rings are only ever looked through in order of time. */
  private boolean ranking;

  private int next;
  private int size;

  Recent(int capacity) {
    sequences = new long[capacity];
    seconds = new double[capacity];
    values = new double[capacity];
    ranked = new Ranked(capacity);
  }

  void add(long sequence, double second, double value) {
    if (size == values.length) {
      if (ranking) {
        ranked.exchange(values[next], value);
      }
    } else {
      size++;
      if (ranking) {
        ranked.add(value);
      }
    }
    sequences[next] = sequence;
    seconds[next] = second;
    values[next] = value;
    next = next + 1 == values.length ? 0 : next + 1;
  }

  void clear() {
    size = 0;
    ranked.clear();
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
    return size == 0 ? Double.NaN : ranked().at((int) (part * (size - 1) + 0.5));
  }

  /** How many different values are held. */
  int distinct() {
    return ranked().distinct();
  }

  private Ranked ranked() {
    if (!ranking) {
      ranking = true;
      for (int back = 0; back < size; back++) {
        ranked.add(value(back));
      }
    }
    return ranked;
  }

  private int at(int back) {
    int at = next - 1 - back;
    return at < 0 ? at + values.length : at;
  }
}
