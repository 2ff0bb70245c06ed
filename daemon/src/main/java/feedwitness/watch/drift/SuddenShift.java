package feedwitness.watch.drift;

/**
 * A sudden change of water that never rests, from minute to minute: cumulative sums of what the
 * minute strays beyond a deadband, from the last half hour and from the last four hours. The
 * deadband widens with how restless this water is.
 */
final class SuddenShift {
  /** Minutes before anything is judged. */
  static final int LEAST = 45;

  private static final int LAG = 10;
  private static final int SHORT = 40;
  private static final int LONG = 240;
  private static final int PAIRS = 4;

  /**
   * A sum signals at so much, a share times minutes; no reading adds more than half of it, so that
   * none can signal alone.
   */
  private static final double LIMIT = 0.06;

  private static final double CLIP = 0.03;
  private static final double RESTLESS = 4;

  /** Nearer than this share of the deadband to what is usual, it is a return and no change. */
  private static final double RETURNS = 0.3;

  private static final double BACK_SHARE = 0.6;
  private static final int BACK = 5;
  private static final int NEW_NORMAL = 240;

  private final double deadband;
  private final RunningMedian recent = new RunningMedian(SHORT);
  private final RunningMedian usual = new RunningMedian(LONG);
  private final RunningMedian restless = new RunningMedian(LONG);
  private final double[] waiting = new double[LAG];
  private int waited;
  private final double[] sums = new double[PAIRS];
  private final double[] since = new double[PAIRS];
  private final double[] strayed = new double[PAIRS];
  private final int[] minutes = new int[PAIRS];

  private int direction;
  private double reference;
  private double begun;
  private double size;
  private int active;
  private int back;

  /**
   * @param noticeShare smallest change that counts, as a share
   */
  SuddenShift(double noticeShare) {
    deadband = noticeShare;
  }

  /** What a minute brought. */
  enum Said {
    NOTHING,
    BEGAN,
    ENDED
  }

  boolean active() {
    return direction != 0;
  }

  /** When the change began. */
  double begun() {
    return begun;
  }

  /** The change, logarithm of the ratio. */
  double size() {
    return size;
  }

  /** What was usual before it, logarithm. */
  double reference() {
    return reference;
  }

  /**
   * Takes the mean of a minute, as a logarithm.
   *
   * @param stands minutes it stands for, if readings are rarer: 1 or more
   */
  Said take(double seconds, double log, int stands) {
    Said said = direction == 0 ? watch(seconds, log, stands) : follow(log, stands);
    for (int i = 0; i < stands; i++) {
      remember(log);
    }
    return said;
  }

  private void remember(double log) {
    waiting[waited % LAG] = log;
    waited++;
    if (waited >= LAG) {
      double old = waiting[waited % LAG];
      if (recent.size() > 0) {
        restless.add(Math.abs(old - recent.median()));
      }
      if (direction == 0 || active > NEW_NORMAL - SHORT) {
        recent.add(old);
        usual.add(old);
      }
    }
  }

  private Said watch(double seconds, double log, int stands) {
    if (usual.size() < LEAST) {
      return Said.NOTHING;
    }
    double allowance = Math.max(deadband, RESTLESS * restless.median());
    double scale = allowance / deadband;
    double[] from = {recent.median(), usual.median()};
    for (int i = 0; i < PAIRS; i++) {
      int towards = i % 2 == 0 ? -1 : 1;
      double away = towards * (log - from[i / 2]);
      if (towards * (log - usual.median()) < RETURNS * deadband) {
        away = Math.min(away, 0);
      }
      if (sums[i] == 0) {
        since[i] = seconds;
        strayed[i] = 0;
        minutes[i] = 0;
      }
      sums[i] = Math.max(0, sums[i] + beyond(away - allowance, stands, CLIP * scale));
      strayed[i] += away;
      minutes[i]++;
      if (sums[i] >= LIMIT * scale) {
        begin(i, from[i / 2]);
        return Said.BEGAN;
      }
    }
    return Said.NOTHING;
  }

  /**
   * What a reading adds. Standing for minutes makes it count more, but three are needed at least.
   */
  private static double beyond(double away, int stands, double clip) {
    double weighed = Math.min(2 * clip / 3, stands * away);
    return Math.max(-clip, Math.max(weighed, Math.min(clip, away)));
  }

  private void begin(int which, double from) {
    direction = which % 2 == 0 ? -1 : 1;
    reference = from;
    begun = since[which];
    size = direction * strayed[which] / minutes[which];
    active = 0;
    back = 0;
    java.util.Arrays.fill(sums, 0);
  }

  private Said follow(double log, int stands) {
    active += stands;
    boolean near = direction * (log - reference) < BACK_SHARE * deadband;
    back = near ? back + stands : 0;
    if (!near) {
      size += (log - reference - size) * 0.2;
    }
    if (back >= BACK || active > NEW_NORMAL) {
      if (active > NEW_NORMAL) {
        usual.clear();
        recent.clear();
      }
      direction = 0;
      return Said.ENDED;
    }
    return Said.NOTHING;
  }

  /** Forgets what is usual. */
  void clear() {
    recent.clear();
    usual.clear();
    restless.clear();
    waited = 0;
    direction = 0;
    java.util.Arrays.fill(sums, 0);
  }

  void write(StateWriter out) {
    recent.write(out);
    usual.write(out);
    restless.write(out);
    out.whole(waited);
    for (double one : waiting) {
      out.number(one);
    }
    for (int i = 0; i < PAIRS; i++) {
      out.number(sums[i]).number(since[i]).number(strayed[i]).whole(minutes[i]);
    }
    out.whole(direction + 1L).number(reference).number(begun).number(size);
    out.whole(active).whole(back);
  }

  void read(StateReader in) {
    recent.read(in);
    usual.read(in);
    restless.read(in);
    waited = in.count(Integer.MAX_VALUE);
    for (int i = 0; i < LAG; i++) {
      waiting[i] = in.number();
    }
    for (int i = 0; i < PAIRS; i++) {
      sums[i] = in.number();
      since[i] = in.number();
      strayed[i] = in.number();
      minutes[i] = in.count(Integer.MAX_VALUE);
    }
    direction = in.count(2) - 1;
    reference = in.number();
    begun = in.number();
    size = in.number();
    active = in.count(Integer.MAX_VALUE);
    back = in.count(Integer.MAX_VALUE);
  }
}
