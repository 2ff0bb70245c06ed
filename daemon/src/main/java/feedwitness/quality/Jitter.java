package feedwitness.quality;

import java.util.function.LongConsumer;

/** Whether the last readings jump to and fro. One jump and the way back is no jitter. */
final class Jitter {
  static final int WINDOW = 8;
  private static final int BIG_STEPS = 4;
  private static final int TURNS = 3;
  private static final int DISTINCT = 4;
  private static final int CALM_STEPS = 4;

  private final Recent recent = new Recent(WINDOW);
  private boolean erratic;

  void add(long sequence, double seconds, double value) {
    recent.add(sequence, seconds, value);
  }

  /** Judges the window; a step counts from {@code bigStep}. Returns whether it is erratic. */
  boolean judge(double bigStep, double floor) {
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
    if (erratic) {
      erratic = big > 0 && !calm(bigStep);
    } else {
      // A coarse sensor between two of its steps is at ease: it has few different values.
      erratic =
          recent.quantile(0) < floor
              && recent.full()
              && big >= BIG_STEPS
              && turns >= TURNS
              && recent.distinct() >= DISTINCT;
    }
    return erratic;
  }

  private boolean calm(double bigStep) {
    return calmSteps(bigStep) >= CALM_STEPS;
  }

  /** How many of the latest steps were small, up to the last big one. */
  int calmSteps(double bigStep) {
    int steps = 0;
    while (steps < recent.size() - 1
        && Math.abs(recent.value(steps) - recent.value(steps + 1)) < bigStep) {
      steps++;
    }
    return steps;
  }

  /** Names the readings before the latest, from the end of the first big step on. */
  void sinceFirstBigStep(double bigStep, LongConsumer sequences) {
    int back = recent.size() - 2;
    while (back > 0 && Math.abs(recent.value(back) - recent.value(back + 1)) < bigStep) {
      back--;
    }
    for (; back > 0; back--) {
      sequences.accept(recent.sequence(back));
    }
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
