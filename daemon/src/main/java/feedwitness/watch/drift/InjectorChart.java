package feedwitness.watch.drift;

import feedwitness.site.DriftLimits;
import feedwitness.watch.drift.DriftFinding.Stage;
import java.util.List;

/**
 * What an injector delivers, event by event, against what is normal. All its strengths feed one
 * pair of sums: a sag common to them is one injector's. Values are logarithms of the delivered
 * share. What is normal is learnt until a change is found, and then stands still.
 */
final class InjectorChart {
  /** Events a day that are assumed until they are known. */
  static final double USUAL_EVENTS = 24;

  /** Events after which it is said that what is normal has been learnt. */
  static final int LEARNT = 12;

  /** Of the false alarms allowed: two events of a large shift still signal with the rest. */
  private static final double SMALL_SHARE = 0.65;

  /** Self-starting, with a memory taken rather too high, runs longer than designed: measured. */
  private static final double CAUTION = 0.85;

  /** The more memory there is, the less so. */
  private static final double CAUTION_OF_MEMORY = 0.45;

  /** Below so much of their limits the sums say that nothing is under way. */
  private static final double SUNK = 0.5;

  private static final List<Stage> STAGES = List.of(Stage.values());
  private static final double DAY = 86_400;
  private static final double FLOOR = 0.003;
  private static final int WIDEST = 12;
  private static final int LEAST_EVENTS = 2;
  private static final int YOUNG = 5;

  /** Events within which a step as large as the notice limit is to be noticed. */
  private static final int SOON = 3;

  /** Just then, a size at most so much of the limit below it may be noticed. */
  private static final double NOTICE_MARGIN = 0.35;

  /** Standard errors that two events may lie below the notice limit. */
  private static final double PAIR_ERRORS = 1.5;

  private static final double ALARM_MARGIN = 0.1;
  private static final double NEARLY_CERTAIN = 2.5;
  private static final int STRANGERS = 3;
  private static final int RECKON_EVERY = 64;

  private final DriftLimits limits;
  private final Baseline baseline = new Baseline(FLOOR);
  private final Levels levels = new Levels();
  private final CusumPair sums;
  private final Strayed strayed = new Strayed();
  private final Waiting waiting = new Waiting();
  private double eventsPerDay = USUAL_EVENTS;
  private double designed;
  private double firstSeconds = Double.NaN;
  private int events;
  private int direction;
  private double begun;
  private double found;
  private double settled = Double.NEGATIVE_INFINITY;
  private boolean learnt;
  private double creeping = Double.NaN;
  private Stage stage = Stage.NOTE;
  private boolean gradual;
  private double size;
  private double error;
  private int measured;
  private int soon;
  private int lastLevel = Levels.UNKNOWN;

  InjectorChart(DriftLimits limits) {
    this.limits = limits;
    designed = runLength();
    sums = new CusumPair(CusumPair.CLIP, designed, SMALL_SHARE);
  }

  /** What an event brought. */
  enum Said {
    NOTHING,
    LEARNT,
    /** A change was found, or it has become worse by a stage. */
    SHIFTED,
    OVER,
    /** Some events in a row are like no known strength. */
    STRANGE,
    STRENGTH_LEARNT
  }

  /** Takes the next irrigation event. */
  Said add(double value, double seconds) {
    soon = SOON;
    return take(value, seconds);
  }

  /** Takes an hour of water that never rests: what is sudden in it is seen by the minute. */
  Said addHour(double value, double seconds) {
    soon = 0;
    return take(value, seconds);
  }

  private Said take(double value, double seconds) {
    Said said = place(value, seconds);
    if (said == Said.NOTHING && !learnt && baseline.count() >= LEARNT) {
      learnt = true;
      return Said.LEARNT;
    }
    return said;
  }

  private Said place(double value, double seconds) {
    reckon(seconds);
    int level = levels.assign(value, direction == 0 ? 0 : size, baseline);
    if (level == Levels.UNKNOWN) {
      return strange(value, seconds);
    }
    levels.known();
    lastLevel = level;
    Judged event = new Judged(level, value, seconds);
    if (!baseline.knows(level)) {
      return learn(event);
    }
    double residual = baseline.residual(event);
    strayed.add(seconds, value - baseline.mean(level), level);
    Judged before = baseline.last();
    baseline.follow(event);
    int signal = sums.add(residual, seconds);
    if (direction != 0) {
      // A small change may be chance, or be followed by another: the sums go on beside it.
      boolean other = signal != 0 && (signal != direction || stage == Stage.SEEN);
      return other ? begin(signal, sums.since(signal)) : judge();
    }
    if (signal != 0) {
      waiting.drop();
      return begin(signal, sums.since(signal));
    }
    waiting.add(event, before, baseline);
    if (sums.nearness() < SUNK) {
      waiting.join(baseline);
    }
    return creep(level, seconds);
  }

  private Said strange(double value, double seconds) {
    int level = levels.stranger(value, seconds, direction == 0, baseline);
    if (level != Levels.UNKNOWN) {
      boolean later = baseline.count() >= LEARNT;
      lastLevel = level;
      take(new Judged(level, value, seconds));
      return later ? Said.STRENGTH_LEARNT : Said.NOTHING;
    }
    return levels.run() == STRANGERS ? Said.STRANGE : Said.NOTHING;
  }

  private Said learn(Judged event) {
    if (direction != 0) {
      return Said.NOTHING; // a strength first met during a drift has no normal to compare with
    }
    take(event);
    return Said.NOTHING;
  }

  private void take(Judged event) {
    baseline.learn(event, baseline.last());
    baseline.follow(event);
  }

  private Said begin(int signal, double since) {
    boolean known = direction == signal;
    Stage before = known ? stage : Stage.NOTE;
    direction = signal;
    int count = Math.max(1, strayed.since(since));
    found = known ? found : strayed.seconds(1);
    boolean slow = strayed.gradual(count);
    begun = slow ? since : strayed.seconds(strayed.sharpest(signal, settled));
    stage = before;
    sums.reset();
    return judge();
  }

  /** Size, shape and stage of a change that is there. */
  private Said judge() {
    double sigma = baseline.sigma();
    if (stage.compareTo(Stage.NOTICE) < 0 && !gradual) {
      begun = Math.max(begun, strayed.seconds(strayed.sharpest(direction, settled)));
    }
    int count = Math.max(1, Math.min(WIDEST, strayed.since(begun)));
    measure(count);
    int least = count > YOUNG ? count : Math.max(LEAST_EVENTS, count - 2);
    for (int fewer = count - 1; fewer >= least && waitsForNotice(); fewer--) {
      measure(fewer);
      begun = waitsForNotice() ? begun : strayed.seconds(fewer);
    }
    if (waitsForNotice()) {
      measure(count);
    }
    int few = Math.min(3, count);
    double now = strayed.mean(few, NEARLY_CERTAIN * sigma);
    boolean small =
        strayed.since(found) >= WIDEST
            && Math.abs(strayed.mean(WIDEST, NEARLY_CERTAIN * sigma))
                < 1.5 * baseline.standardError(WIDEST);
    boolean back = few == 3 && Math.abs(now) < Math.log1p(limits.noticePercent() / 200);
    if (stage.compareTo(Stage.NOTICE) >= 0 ? back : small) {
      return over();
    }
    gradual = strayed.gradual(strayed.since(begun));
    Stage reached = reached();
    if (reached.compareTo(stage) > 0) {
      stage = reached;
      return Said.SHIFTED;
    }
    return Said.NOTHING;
  }

  /** Size from the last events, so many. */
  private void measure(int count) {
    measured = count;
    size = strayed.mean(count, NEARLY_CERTAIN * baseline.sigma());
    error = Math.hypot(baseline.standardError(count), baseline.errorOfMean(lastLevel));
  }

  /** An event by chance just before a step makes the step look small: fewer events may say more. */
  private boolean waitsForNotice() {
    return stage.compareTo(Stage.NOTICE) < 0 && !mayReachNotice();
  }

  private Said over() {
    settled = strayed.seconds(1);
    direction = 0;
    size = 0;
    creeping = Double.NaN;
    sums.reset();
    return Said.OVER;
  }

  private Stage reached() {
    if (strayed.since(begun) < LEAST_EVENTS) {
      return Stage.SEEN;
    }
    double alarm = limits.alarmPercent();
    double margin = Math.min(plusMinusPercent() / 2, ALARM_MARGIN * alarm);
    if (Math.abs(sizePercent()) + margin >= alarm) {
      return Stage.ALARM;
    }
    return mayReachNotice() ? Stage.NOTICE : Stage.SEEN;
  }

  private boolean mayReachNotice() {
    double notice = limits.noticePercent();
    return Math.abs(sizePercent()) + leewayPercent() >= notice;
  }

  /**
   * How far below the notice limit a size may be. Half the steps of just the limit measure smaller:
   * to notice them soon, two events may miss it by one and a half standard errors, and at the
   * third, the last chance, it is enough that the size may well be the limit. Later it has to be.
   */
  private double leewayPercent() {
    if (measured > soon) {
      return 0;
    }
    return measured < soon
        ? PAIR_ERRORS * plusMinusPercent() / NEARLY_CERTAIN
        : Math.min(plusMinusPercent(), NOTICE_MARGIN * limits.noticePercent());
  }

  /** Means that follow what creeps too slowly for the sums are held against their origin. */
  private Said creep(int level, double seconds) {
    double crept = baseline.mean(level) - baseline.origin(level);
    double notice = Math.log1p(limits.noticePercent() / 100);
    if (!(Math.abs(crept) >= notice / 2)) {
      creeping = Double.NaN;
      return Said.NOTHING;
    }
    creeping = Double.isNaN(creeping) ? seconds : creeping;
    if (Math.abs(crept) < notice) {
      return Said.NOTHING;
    }
    strayed.shift(baseline.backToOrigin());
    return begin(crept > 0 ? 1 : -1, creeping);
  }

  private double runLength() {
    double memory = Math.pow(baseline.memory(), 4);
    return (CAUTION + CAUTION_OF_MEMORY * memory) * limits.falseAlarms().days() * eventsPerDay;
  }

  /** The false-alarm rate is meant by the day; sums count events. */
  private void reckon(double seconds) {
    firstSeconds = Double.isNaN(firstSeconds) ? seconds : firstSeconds;
    events++;
    double days = (seconds - firstSeconds) / DAY;
    if (events % RECKON_EVERY == 0) {
      double actual = days < 2 ? eventsPerDay : Math.max(2, Math.min(200, events / days));
      if (Math.abs(Math.log(actual / eventsPerDay)) > 0.2) {
        eventsPerDay = actual;
      }
      if (Math.abs(Math.log(runLength() / designed)) > 0.1) {
        designed = runLength();
        sums.runLength(designed);
      }
    }
  }

  boolean shifted() {
    return direction != 0;
  }

  Stage stage() {
    return stage;
  }

  boolean gradual() {
    return gradual;
  }

  double begun() {
    return begun;
  }

  /** Events since it began, as far as they are remembered. */
  int eventsSince() {
    return strayed.since(begun);
  }

  double sizePercent() {
    return 100 * Math.expm1(size);
  }

  /** Half the width within which the size is nearly certain. */
  double plusMinusPercent() {
    return 100 * NEARLY_CERTAIN * error * Math.exp(size);
  }

  /** A strange strength against the one before it, %. */
  double strangePercent() {
    return lastLevel == Levels.UNKNOWN
        ? Double.NaN
        : 100 * Math.expm1(levels.stranger() - baseline.mean(lastLevel));
  }

  Levels levels() {
    return levels;
  }

  Baseline baseline() {
    return baseline;
  }

  Strayed strayed() {
    return strayed;
  }

  int lastLevel() {
    return lastLevel;
  }

  double eventsPerDay() {
    return eventsPerDay;
  }

  /** What is normal is learnt anew; scatter and memory are kept. */
  void rebaseline() {
    levels.clear(baseline);
    baseline.interrupt();
    strayed.clear();
    waiting.drop();
    learnt = false;
    direction = 0;
    size = 0;
    creeping = Double.NaN;
    lastLevel = Levels.UNKNOWN;
    sums.reset();
  }

  void write(StateWriter out) {
    baseline.write(out);
    levels.write(out);
    sums.write(out);
    strayed.write(out);
    waiting.write(out);
    out.number(eventsPerDay).number(firstSeconds).whole(events).whole(direction + 1L);
    out.number(begun).number(creeping).choice(stage, STAGES).truth(gradual);
    out.number(size)
        .number(error)
        .whole(lastLevel + 1L)
        .number(settled)
        .truth(learnt)
        .number(found);
  }

  void read(StateReader in) {
    baseline.read(in);
    levels.read(in);
    sums.read(in);
    strayed.read(in);
    waiting.read(in);
    eventsPerDay = in.number();
    firstSeconds = in.number();
    events = in.count(Integer.MAX_VALUE);
    direction = in.count(2) - 1;
    begun = in.number();
    creeping = in.number();
    stage = in.choice(STAGES);
    gradual = in.truth();
    size = in.number();
    error = in.number();
    lastLevel = in.count(Levels.MOST) - 1;
    settled = in.number();
    learnt = in.truth();
    found = in.number();
    eventsPerDay = Math.max(2, Math.min(200, eventsPerDay));
    designed = runLength();
    sums.runLength(designed);
  }
}
