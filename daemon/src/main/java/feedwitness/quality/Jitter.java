package feedwitness.quality;

/** Whether the last readings jump to and fro. One jump and the way back is no jitter. */
final class Jitter {
  static final int WINDOW = 8;
  private static final int BIG_STEPS = 4;
  private static final int TURNS = 3;
  private static final int DISTINCT = 4;
  private static final int BIG_WHILE_ERRATIC = 2;

  private final Recent recent = new Recent(WINDOW);
  private boolean erratic;

  void add(long sequence, double seconds, double value) {
    recent.add(sequence, seconds, value);
  }

  /** Judges the window; a step counts from {@code bigStep}. Returns whether it is erratic. */
  boolean judge(double bigStep) {
    int big = 0;
    int turns = 0;
    double lastSign = 0;
    for (int back = recent.size() - 2; back >= 0; back--) {
      double step = recent.value(back) - recent.value(back + 1);
      if (Math.abs(step) >= bigStep) {
        big++;
        if (lastSign != 0 && Math.signum(step) != lastSign) {
          turns++;
        }
        lastSign = Math.signum(step);
      }
    }
    erratic =
        erratic
            ? big >= BIG_WHILE_ERRATIC
            : recent.full()
                && big >= BIG_STEPS
                && turns >= TURNS
                // A coarse sensor between two of its steps is at ease.
                && recent.distinct() >= DISTINCT;
    return erratic;
  }

  boolean erratic() {
    return erratic;
  }

  Recent recent() {
    return recent;
  }

  void clear() {
    recent.clear();
    erratic = false;
  }
}
