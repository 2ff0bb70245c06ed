package feedwitness.watch.drift;

/**
 * Whether what a probe says has just moved, as it does when water begins to flow: the line's rested
 * water is as warm as the air, and the injector needs a few strokes. Learns the probe's own jitter,
 * so that a coarse or noisy one does not seem to move for ever.
 */
final class Movement {
  /** Against the reading so long ago, s; against the one before if readings are rarer. */
  static final double REACH = 20;

  private static final double LONGEST = 180;
  private static final int RING = 64;
  private static final double LOG = 0.03;
  private static final double KELVIN = 0.4;
  private static final double JITTERS = 8;
  private static final double LEARNING = 0.01;

  private final double[] seconds = new double[RING];
  private final double[] logs = new double[RING];
  private final double[] celsius = new double[RING];
  private int next;
  private int size;
  private int back;
  private double jitter = LOG / JITTERS / 2;
  private double jitterKelvin = KELVIN / JITTERS / 2;

  /** What moved. */
  enum Moved {
    NOTHING,
    STRENGTH,
    WARMTH
  }

  void clear() {
    size = 0;
    back = 0;
  }

  /** Takes the next reading. */
  Moved take(double now, double log, double degrees) {
    Moved moved = Moved.NOTHING;
    if (size > 0) {
      int before = (next + RING - 1) % RING;
      learn(Math.abs(log - logs[before]), Math.abs(degrees - celsius[before]));
      back = Math.min(back + 1, size);
      while (back > 1 && now - seconds[(next + RING - back + 1) % RING] >= REACH) {
        back--;
      }
      int reference = (next + RING - back) % RING;
      if (now - seconds[reference] <= LONGEST) {
        moved = compare(log - logs[reference], degrees - celsius[reference]);
      }
    }
    seconds[next] = now;
    logs[next] = log;
    celsius[next] = degrees;
    next = (next + 1) % RING;
    size = Math.min(RING, size + 1);
    return moved;
  }

  private Moved compare(double log, double kelvin) {
    if (Math.abs(kelvin) > Math.max(KELVIN, JITTERS * jitterKelvin)) {
      return Moved.WARMTH;
    }
    return Math.abs(log) > Math.max(LOG, JITTERS * jitter) ? Moved.STRENGTH : Moved.NOTHING;
  }

  private void learn(double log, double kelvin) {
    jitter += LEARNING * (Math.min(log, LOG) - jitter);
    if (!Double.isNaN(kelvin)) {
      jitterKelvin += LEARNING * (Math.min(kelvin, KELVIN) - jitterKelvin);
    }
  }

  void write(StateWriter out) {
    out.number(jitter).number(jitterKelvin).whole(size).whole(back);
    for (int i = size; i > 0; i--) {
      int at = (next + RING - i) % RING;
      out.number(seconds[at]).number(logs[at]).number(celsius[at]);
    }
  }

  void read(StateReader in) {
    jitter = in.number();
    jitterKelvin = in.number();
    size = in.count(RING);
    back = in.count(RING);
    for (int i = 0; i < size; i++) {
      seconds[i] = in.number();
      logs[i] = in.number();
      celsius[i] = in.number();
    }
    next = size % RING;
  }
}
