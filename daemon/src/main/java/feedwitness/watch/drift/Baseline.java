package feedwitness.watch.drift;

import org.jspecify.annotations.Nullable;

/**
 * What is normal, and how far an event strays from it in standard deviations. Each strength has a
 * mean of its own; scatter and memory from event to event belong to the injector they share.
 *
 * <p>Self-starting (Hawkins 1987): each event is judged by all before it and then joins them, so
 * few events cost power but raise no false alarms; a mean frozen after a dozen events would be off
 * by a third of a standard deviation, more than the small sum allows. Events are prewhitened; over
 * a pause their memory fades with the time that passed.
 */
final class Baseline {
  /** Events of a strength before it is judged. */
  static final int LEAST_OF_LEVEL = 4;

  /** Events in all before any is judged. */
  static final int LEAST = 8;

  /** Events after which older ones begin to count less: 80 days at 24 a day. */
  static final int MOST = 2000;

  /** Events after which a strength's origin is set, against which slow creep is seen. */
  static final int ORIGIN = 24;

  private static final double CLIP = 2.5;
  private static final double CLIPPED_SQUARE = 0.9776;
  private static final double SHORT_GAP = 3;

  private final double floor;
  private final double[] first = new double[Levels.MOST];
  private final double[] mean = new double[Levels.MOST];
  private final double[] origin = new double[Levels.MOST];
  private final double[] weight = new double[Levels.MOST];
  private final int[] count = new int[Levels.MOST];
  private final Memory memory = new Memory();
  private double squares;
  private double freedom;
  private @Nullable Judged last;
  private double gap = Double.NaN;

  /**
   * @param floor least standard deviation, in the unit of the values: no instrument repeats better
   */
  Baseline(double floor) {
    this.floor = floor;
  }

  int count(int level) {
    return count[level];
  }

  /** Events of all strengths. */
  int count() {
    int all = 0;
    for (int one : count) {
      all += one;
    }
    return all;
  }

  double mean(int level) {
    return mean[level];
  }

  /** Mean of the strength's first events; NaN before there were enough. */
  double origin(int level) {
    return count[level] >= ORIGIN ? origin[level] : Double.NaN;
  }

  boolean knows(int level) {
    return count[level] >= LEAST_OF_LEVEL && count() >= LEAST;
  }

  /** Standard deviation of an event. */
  double sigma() {
    return freedom < 1 ? floor : Math.max(floor, Math.sqrt(squares / freedom / CLIPPED_SQUARE));
  }

  /** Correlation of successive events as it is used: rather too high. */
  double memory() {
    return memory.coefficient();
  }

  /** Standard deviation of the mean of so many events. */
  double standardError(int events) {
    double coefficient = memory();
    double inflated = Math.sqrt((1 + coefficient) / (1 - coefficient));
    return sigma() * Math.min(inflated, Math.sqrt(events)) / Math.sqrt(events);
  }

  /** Standard deviation of a strength's mean. */
  double errorOfMean(int level) {
    return sigma() / Math.sqrt(Math.max(1, weight[level]));
  }

  /** Residual of an event, standard deviations; NaN while too little is known. */
  double residual(Judged event) {
    int level = event.level();
    if (!knows(level)) {
      return Double.NaN;
    }
    double fade = fade(event, last);
    double spread = sigma() * Math.sqrt(1 - fade * fade);
    if (fade > memory() / 2 && !Double.isNaN(memory.innovation())) {
      spread = memory.innovation();
    }
    spread = Math.max(floor * Math.sqrt(1 - fade * fade), spread);
    double added = information(event, last, fade);
    double known = weight[level] / (weight[level] + added);
    double t = surprise(event, last, event.value(), fade) * Math.sqrt(known) / spread;
    return Normal.ofStudent(t, Math.max(4, Math.min(freedom, memory.pairs() - 2)));
  }

  /** What is new in the value. */
  private double surprise(Judged event, @Nullable Judged before, double value, double fade) {
    double carried =
        before == null || fade == 0 ? 0 : fade * (before.value() - mean[before.level()]);
    return value - mean[event.level()] - carried;
  }

  /** How much an event tells of its strength's mean; 1 for one that stands alone. */
  private static double information(Judged event, @Nullable Judged before, double fade) {
    boolean same = before != null && before.level() == event.level();
    return same ? (1 - fade) / (1 + fade) : 1;
  }

  private double fade(Judged event, @Nullable Judged before) {
    if (before == null || count[before.level()] == 0 || Double.isNaN(gap)) {
      return 0;
    }
    double passed = (event.seconds() - before.seconds()) / gap;
    double faded = Math.pow(memory(), Math.max(1, passed));
    return faded < 0.01 ? 0 : faded;
  }

  /** The event before the next one; null if there is none to compare with. */
  @Nullable Judged last() {
    return last;
  }

  /** The event was in order: it joins those before. */
  void learn(Judged event, @Nullable Judged before) {
    int level = event.level();
    int n = count[level];
    if (n == 0) {
      first[level] = event.value();
      mean[level] = event.value();
      weight[level] = 1;
    } else {
      adjust(event, before);
    }
    count[level] = Math.min(MOST, n + 1);
    if (count[level] == ORIGIN && n < ORIGIN) {
      origin[level] = mean[level];
    }
  }

  private void adjust(Judged event, @Nullable Judged before) {
    int level = event.level();
    double most = freedom >= LEAST ? CLIP * sigma() : Double.MAX_VALUE;
    double strayed = clip(event.value() - mean[level], most);
    double keep = freedom >= MOST ? 1 - 1.0 / MOST : 1;
    squares = squares * keep + strayed * strayed * count[level] / (count[level] + 1.0);
    freedom = freedom * keep + 1;
    if (before != null && count[before.level()] > 0) {
      remember(event, before, strayed, most, keep);
    }
    double fade = fade(event, before);
    double added = information(event, before, fade);
    double step = surprise(event, before, mean[level] + strayed, fade);
    weight[level] = Math.min(MOST, weight[level] + added);
    boolean same = before != null && before.level() == level;
    mean[level] += clip(step, most) * (same ? added / (1 - fade) : added) / weight[level];
  }

  private void remember(Judged event, Judged before, double strayed, double most, double keep) {
    if (!Double.isNaN(gap) && event.seconds() - before.seconds() > SHORT_GAP * gap) {
      return;
    }
    double earlier = clip(before.value() - mean[before.level()], most);
    boolean same = event.level() == before.level();
    double centre = same ? mean[event.level()] - first[event.level()] : 0;
    memory.add(same ? event.level() : Levels.MOST, centre + earlier, centre + strayed, keep);
  }

  private static double clip(double value, double most) {
    return Math.max(-most, Math.min(most, value));
  }

  /** Notes an event, so that the next one is judged by it. */
  void follow(Judged event) {
    if (last != null) {
      double passed = event.seconds() - last.seconds();
      gap =
          Double.isNaN(gap)
              ? passed
              : gap + 0.1 * (Math.max(gap / 2, Math.min(2 * gap, passed)) - gap);
    }
    last = event;
  }

  /**
   * Puts every mean back to its origin where there is one.
   *
   * @return by how much values stray more than before, for each strength
   */
  double[] backToOrigin() {
    double[] by = new double[Levels.MOST];
    for (int i = 0; i < Levels.MOST; i++) {
      if (count[i] >= ORIGIN) {
        by[i] = mean[i] - origin[i];
        mean[i] = origin[i];
      }
    }
    return by;
  }

  /** Forgets one strength's mean; its next events make another. */
  void forget(int level) {
    count[level] = 0;
    weight[level] = 0;
  }

  /** What strayed last says nothing about the next event. */
  void interrupt() {
    last = null;
  }

  void write(StateWriter out) {
    for (int i = 0; i < Levels.MOST; i++) {
      out.number(first[i]).number(mean[i]).number(origin[i]).number(weight[i]).whole(count[i]);
    }
    memory.write(out);
    out.number(squares).number(freedom);
    Judged.write(last, out);
    out.number(gap);
  }

  void read(StateReader in) {
    for (int i = 0; i < Levels.MOST; i++) {
      first[i] = in.number();
      mean[i] = in.number();
      origin[i] = in.number();
      weight[i] = in.number();
      count[i] = in.count(MOST);
    }
    memory.read(in);
    squares = in.number();
    freedom = in.number();
    last = Judged.read(in);
    gap = in.number();
  }
}
