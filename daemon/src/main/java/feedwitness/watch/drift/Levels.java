package feedwitness.watch.drift;

/**
 * Which strength an event belongs to. An injector is turned between a few strengths in a day: known
 * ones come from the configuration or from events that keep coming back; each is then judged
 * against its own past. Values are logarithms of the delivered share.
 */
final class Levels {
  /** Strengths a line can have. */
  static final int MOST = 12;

  static final int UNKNOWN = -1;

  private static final double LEARNT_WIDTH = 0.15;
  private static final double APART = 0.2;
  private static final double NAMED_WIDTH = 0.3;
  private static final double ALIKE = 0.08;
  private static final int LEARNING = 36;

  private final double[] named = new double[MOST];
  private int names;
  private final boolean[] used = new boolean[MOST];

  private double stranger = Double.NaN;
  private int visits;
  private int run;
  private boolean alike = true;
  private double firstSeconds;

  /**
   * Strengths given by the configuration, as logarithms; called once more if the source is known.
   */
  void name(double[] logs) {
    names = Math.min(MOST, logs.length);
    for (int i = 0; i < names; i++) {
      named[i] = logs[i];
      used[i] = true;
    }
  }

  /** A strength that people named meanwhile; nothing if there is one like it. */
  void expect(double log, Baseline baseline) {
    int place = free();
    for (int i = 0; i < MOST; i++) {
      if (used[i] && Math.abs(log - center(i, baseline)) <= LEARNT_WIDTH) {
        return;
      }
    }
    if (place != UNKNOWN && log != 0) {
      named[place] = log;
      used[place] = true;
      baseline.forget(place);
    }
  }

  int names() {
    return names;
  }

  double named(int level) {
    return level < names ? named[level] : Double.NaN;
  }

  boolean used(int level) {
    return used[level];
  }

  /**
   * The strength of an event; {@link #UNKNOWN} if it is like none.
   *
   * @param offset how far all strengths lie from their means at present, while a drift lasts
   */
  int assign(double value, double offset, Baseline baseline) {
    int best = UNKNOWN;
    double nearest = Double.MAX_VALUE;
    double second = Double.MAX_VALUE;
    for (int i = 0; i < MOST; i++) {
      if (used[i]) {
        double center = center(i, baseline);
        double away = Math.min(Math.abs(value - center), Math.abs(value - center - offset));
        if (away < nearest) {
          second = nearest;
          nearest = away;
          best = i;
        } else {
          second = Math.min(second, away);
        }
      }
    }
    double width =
        best >= 0 && best < names && baseline.count(best) < Baseline.LEAST_OF_LEVEL
            ? NAMED_WIDTH
            : LEARNT_WIDTH;
    return nearest <= width && nearest < 0.8 * second ? best : UNKNOWN;
  }

  private double center(int level, Baseline baseline) {
    return baseline.count(level) > 0 ? baseline.mean(level) : named[level];
  }

  /** An event of a known strength came: strangers before it were a visit. */
  void known() {
    if (run > 0) {
      visits++;
    }
    run = 0;
    alike = true;
  }

  /**
   * An event like no known strength came.
   *
   * @param mayLearn whether it may become one; while a drift lasts it may be the drift
   * @return the level it has become, or {@link #UNKNOWN}
   */
  int stranger(double value, double seconds, boolean mayLearn, Baseline baseline) {
    boolean same = Math.abs(value - stranger) <= ALIKE;
    if (run == 0) {
      firstSeconds = seconds;
    }
    alike &= run == 0 || same;
    run++;
    boolean returns = same && visits > 0 && isApart(value, baseline);
    if (!same) {
      stranger = value;
      visits = 0;
    }
    boolean learning = names == 0 && baseline.count() < LEARNING;
    if (!mayLearn || (!returns && !learning)) {
      return UNKNOWN;
    }
    int level = free();
    if (level != UNKNOWN) {
      used[level] = true;
      baseline.forget(level);
      visits = 0;
      run = 0;
      stranger = Double.NaN;
    }
    return level;
  }

  /** A drift at the edge of what belongs to a strength comes and goes like another strength. */
  private boolean isApart(double value, Baseline baseline) {
    for (int i = 0; i < MOST; i++) {
      if (used[i] && Math.abs(value - center(i, baseline)) < APART) {
        return false;
      }
    }
    return true;
  }

  private int free() {
    for (int i = 0; i < MOST; i++) {
      if (!used[i]) {
        return i;
      }
    }
    return UNKNOWN;
  }

  /** Strange events in a row. */
  int run() {
    return run;
  }

  /** Whether they are like each other. */
  boolean alike() {
    return alike;
  }

  double stranger() {
    return stranger;
  }

  double firstSeconds() {
    return firstSeconds;
  }

  /** All means are forgotten, and the strengths that were learnt. */
  void clear(Baseline baseline) {
    for (int i = 0; i < MOST; i++) {
      used[i] = i < names || named[i] != 0;
      baseline.forget(i);
    }
    stranger = Double.NaN;
    visits = 0;
    run = 0;
    alike = true;
  }

  void write(StateWriter out) {
    out.whole(names);
    for (int i = 0; i < MOST; i++) {
      out.number(named[i]).truth(used[i]);
    }
    out.number(stranger).whole(visits).whole(run).truth(alike).number(firstSeconds);
  }

  void read(StateReader in) {
    names = in.count(MOST);
    for (int i = 0; i < MOST; i++) {
      named[i] = in.number();
      used[i] = in.truth();
    }
    stranger = in.number();
    visits = in.count(Integer.MAX_VALUE);
    run = in.count(Integer.MAX_VALUE);
    alike = in.truth();
    firstSeconds = in.number();
  }
}
