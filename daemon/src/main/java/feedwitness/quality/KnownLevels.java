package feedwitness.quality;

/**
 * Levels that are normal here though far below the usual one, as plain water between waterings: a
 * level at which readings settled once, or to which they went quietly and came back three times.
 */
final class KnownLevels {
  private static final int HELD = 6;
  private static final double NEAR = 0.08;
  private static final int VISITS = 3;

  private final double[] levels = new double[HELD];
  private final int[] visits = new int[HELD];
  private int next;

  /** Readings settled there. */
  void settled(double level) {
    visit(level, VISITS);
  }

  /** Readings were there for a while, quietly, and came back. */
  void visited(double level) {
    visit(level, 1);
  }

  private void visit(double level, int weight) {
    int at = find(level);
    if (at < 0) {
      at = next;
      next = (next + 1) % HELD;
      levels[at] = level;
      visits[at] = 0;
    }
    visits[at] += weight;
  }

  boolean knows(double value) {
    int at = find(value);
    return at >= 0 && visits[at] >= VISITS;
  }

  private int find(double value) {
    for (int i = 0; i < HELD; i++) {
      if (visits[i] > 0 && Math.abs(value - levels[i]) <= NEAR * levels[i]) {
        return i;
      }
    }
    return -1;
  }
}
