package feedwitness.quality;

/**
 * Tests of a conductivity against its own past: air, low hold, spikes, jitter, rises. Levels that
 * change and stay changed are the grower's business, not a fault of the probe.
 */
final class ConductivityTests {
  private static final int START_READINGS = 8;
  private static final double START_SECONDS = 60;
  private static final int SHORT = 5;
  private static final int LONGEST_SPIKE = 3;
  private static final double ABSOLUTELY_DRY = 0.001;

  /** Rain has some 0.02 mS/cm. */
  private static final double LEAST_WATER = 0.015;

  private static final double LOW = 0.7;
  private static final double DROP_HELD = 0.9;
  private static final double FAR_BELOW_USUAL = 0.5;
  private static final double FAST_RISE = 8;
  private static final double NO_WATER_TO_RISE_FROM = 0.05;
  private static final double FAR_FROM_USUAL = 0.25;
  private static final double LEAST_JUMP = 0.03;
  private static final double LEAST_JITTER = 0.02;
  private static final double BELOW = 0.95;
  private static final double SHARP = 0.25;
  private static final double EVEN = 0.6;
  private static final double SHARPER = 2;
  private static final double UNREST = 2;
  private static final int LULL = 2;
  private static final double PULSE_MEMORY = 400;
  private static final double LEAST_PULSES = 4;
  private static final double PULSING = 0.03;
  private static final int SLOW_LEARNING = 32;

  private enum State {
    STARTING,
    STEADY,
    AWAY
  }

  private final JudgeSettings settings;
  private final Recent start = new Recent(START_READINGS);
  private final Recent accepted = new Recent(SHORT);
  private final Recent pending = new Recent(LONGEST_SPIKE + 1);
  private final Recent afterFall = new Recent(QualityJudge.REACH);
  private final Steps steps = new Steps();
  private final UsualLevel usual = new UsualLevel();
  private final Jitter jitter = new Jitter();
  private final Recent lull = new Recent(Jitter.WINDOW);
  private final KnownLevels levels = new KnownLevels();
  private final DryHabit dryHabit = new DryHabit();
  private final Absence absence = new Absence();
  private State state = State.STARTING;
  private double firstSeconds = Double.NaN;
  private double pulses;

  /** What was usual before it rose to far more. */
  private double former = Double.NaN;

  private long judged;
  private boolean falling;
  private long erraticReadings;

  ConductivityTests(JudgeSettings settings) {
    this.settings = settings;
  }

  /** Nothing is amiss at present. */
  boolean steady() {
    return state == State.STEADY && !jitter.erratic() && pending.size() == 0;
  }

  /** A pause: what follows need not continue what was. */
  void pause(boolean isLong) {
    pending.clear();
    afterFall.clear();
    falling = false;
    jitter.clear();
    lull.clear();
    if (isLong && state == State.STEADY) {
      restart(Double.NaN);
    }
  }

  /** {@code value} in mS/cm, referred to one temperature as well as may be. */
  void judge(long sequence, double seconds, double value, Verdict verdict) {
    dryHabit.add(seconds, isDry(value));
    pulses -= pulses / PULSE_MEMORY;
    judged++;
    switch (state) {
      case STARTING -> starting(sequence, seconds, value, verdict);
      case STEADY -> steady(sequence, seconds, value, verdict);
      case AWAY -> away(sequence, seconds, value, verdict);
    }
  }

  private boolean isDry(double value) {
    return state == State.AWAY ? absence.dry(value) : value < ABSOLUTELY_DRY;
  }

  private void starting(long sequence, double seconds, double value, Verdict verdict) {
    if (Double.isNaN(firstSeconds)) {
      firstSeconds = seconds;
    }
    start.add(sequence, seconds, value);
    verdict.now(QualityFlag.UNKNOWN);
    double median = start.median();
    if (!start.full() || seconds - firstSeconds < START_SECONDS || median < ABSOLUTELY_DRY) {
      return;
    }
    accepted.clear();
    boolean wet = false;
    for (int back = start.size() - 1; back >= 0; back--) {
      double one = start.value(back);
      if (one < Absence.DRY * median) {
        // Before the first water a probe is dry and nothing is wrong with it.
        if (wet) {
          verdict.earlier(start.sequence(back), QualityFlag.IN_AIR);
        }
      } else if (one < LOW * median || one > median / LOW) {
        verdict.earlier(start.sequence(back), QualityFlag.SPIKE);
      } else {
        accept(start.sequence(back), seconds, one, false);
        wet = true;
      }
    }
    dryHabit.wetAgain();
    state = State.STEADY;
  }

  /** Other liquid altogether: what was usual says nothing of it, but may come again. */
  private void forgetUsual(double level) {
    if (usual.median() > LEAST_WATER) {
      levels.settled(usual.median());
      former = level > usual.median() / FAR_BELOW_USUAL ? usual.median() : Double.NaN;
    }
    usual.restart();
  }

  /** Low for now, but normal here: the way back from other liquid need not end where it began. */
  private boolean known(double value) {
    boolean back = value > FAR_BELOW_USUAL * former && value < former / FAR_BELOW_USUAL;
    return back || levels.knows(value) || usual.was(value);
  }

  private void restart(double level) {
    start.clear();
    firstSeconds = Double.NaN;
    forgetUsual(level);
    state = State.STARTING;
  }

  private void steady(long sequence, double seconds, double value, Verdict verdict) {
    double level = accepted.median();
    double day = Double.isNaN(usual.median()) ? level : usual.median();
    double floor = Math.min(level, day);
    boolean dry = value < Absence.DRY * floor;
    boolean low = value < LOW * floor || value < FAR_BELOW_USUAL * day;
    boolean fast = value > FAST_RISE * Math.max(level, day) && floor > NO_WATER_TO_RISE_FROM;
    if (fast || ((dry || low) && !known(value))) {
      leave(sequence, seconds, value, verdict, fast);
      return;
    }
    if (erratic(sequence, seconds, value, level, day, verdict)) {
      return;
    }
    double unrest = Math.abs(level - day) > FAR_FROM_USUAL * day ? UNREST : 1;
    if (Math.abs(value - level) > unrest * bigChange(level) * level) {
      pending.add(sequence, seconds, value);
      if (!pulsing()) {
        verdict.now(QualityFlag.UNKNOWN);
      }
      if (pending.full()) {
        adoptStep(level);
      }
      return;
    }
    if (pending.size() > 0) {
      cameBack(value, level, verdict);
    }
    accept(sequence, seconds, value, true);
  }

  /** A spike goes and comes back at a jump; a hump that swells or ebbs is water. */
  private void cameBack(double value, double level, Verdict verdict) {
    double before = accepted.value(0);
    double out = Math.abs(pending.value(pending.size() - 1) - before);
    double back = Math.abs(pending.value(0) - value);
    double jump = Math.min(out, back);
    boolean sharp = Math.abs(value - before) < SHARP * jump && jump > EVEN * Math.max(out, back);
    if (sharp && jump > Math.max(bigChange(level) * level, SHARPER * latestSteps())) {
      pulses += pending.size();
      if (!pulsing()) {
        verdict.earlier(pending, QualityFlag.SPIKE);
      }
    }
    pending.clear();
  }

  /** The largest of the latest steps, mS/cm: what water does at present. */
  private double latestSteps() {
    double largest = 0;
    for (int back = 0; back + 1 < accepted.size(); back++) {
      largest = Math.max(largest, Math.abs(accepted.value(back) - accepted.value(back + 1)));
    }
    return largest;
  }

  /** So many spikes are the strokes of a pump. */
  private boolean pulsing() {
    double share = PULSING * Math.min((double) judged, PULSE_MEMORY);
    return pulses >= Math.max(LEAST_PULSES, share);
  }

  /** The readings stay where they went: that is the level now. */
  private void adoptStep(double level) {
    falling = pending.median() < DROP_HELD * level;
    afterFall.clear();
    accepted.clear();
    for (int back = pending.size() - 1; back >= 0; back--) {
      accept(pending.sequence(back), Double.NaN, pending.value(back), back < pending.size() - 1);
    }
    pending.clear();
    if (accepted.median() > FAST_RISE * usual.median()) {
      forgetUsual(accepted.median());
    }
  }

  private void accept(long sequence, double seconds, double value, boolean continues) {
    if (continues && accepted.size() > 0) {
      steps.add(Math.abs(value - accepted.value(0)) / Math.max(value, accepted.value(0)));
    }
    accepted.add(sequence, seconds, value);
    if (!Double.isNaN(seconds)) {
      usual.add(seconds, value);
    }
    if (falling) {
      afterFall.add(sequence, seconds, value);
      if (afterFall.full()) {
        falling = false;
        afterFall.clear();
      }
    }
  }

  private boolean erratic(
      long sequence, double seconds, double value, double level, double day, Verdict verdict) {
    boolean was = jitter.erratic();
    jitter.add(sequence, seconds, value);
    double middle = jitter.recent().median();
    double big = Math.max(LEAST_JITTER, Math.max(1.8 * steps.high(), 1.3 * steps.large())) * level;
    if (Math.abs(middle - day) > FAR_FROM_USUAL * day) {
      big = Math.max(big, 0.5 * middle);
    }
    boolean is = steps.known() && jitter.judge(big, floor(level));
    if (is) {
      sayErratic(sequence, seconds, value, big, verdict);
      if (!was) {
        jitter.sinceFirstBigStep(big, at -> verdict.earlier(at, QualityFlag.ERRATIC));
        pending.clear();
      }
      erraticReadings++;
      if (erraticReadings % SLOW_LEARNING == 0) {
        double before = jitter.recent().value(1);
        steps.add(Math.abs(value - before) / Math.max(value, before));
      }
    } else if (was) {
      lull.clear();
      accepted.clear();
      for (int back = SHORT - 1; back >= 0; back--) {
        accept(jitter.recent().sequence(back), seconds, jitter.recent().value(back), false);
      }
    }
    return is;
  }

  /** What lies still for a while is erratic only if it jumps again. */
  private void sayErratic(
      long sequence, double seconds, double value, double big, Verdict verdict) {
    if (jitter.calmSteps(big) >= LULL) {
      lull.add(sequence, seconds, value);
      verdict.now(QualityFlag.UNKNOWN);
      return;
    }
    verdict.earlier(lull, QualityFlag.ERRATIC);
    lull.clear();
    verdict.now(QualityFlag.ERRATIC);
  }

  /** Turbulent mixing scatters above what was; a bad contact or bubbles to both sides or below. */
  private double floor(double level) {
    double calm = usual.calmLevel();
    return BELOW * (Double.isNaN(calm) ? level : calm);
  }

  private void leave(long sequence, double seconds, double value, Verdict verdict, boolean up) {
    double level = accepted.median();
    double day = Double.isNaN(usual.median()) ? level : usual.median();
    absence.begin(seconds, level, day, former, bigChange(level), typical(level), up);
    if (absence.dry(value) && !dryIsNormal()) {
      // A held drop reads part-way for a while before the probe reads air.
      verdict.earlier(afterFall, QualityFlag.IN_AIR);
      verdict.earlier(pending, QualityFlag.IN_AIR);
    }
    pending.clear();
    afterFall.clear();
    falling = false;
    jitter.clear();
    lull.clear();
    state = State.AWAY;
    away(sequence, seconds, value, verdict);
  }

  private void away(long sequence, double seconds, double value, Verdict verdict) {
    boolean home = !absence.dry(value) && known(value);
    Absence.Turn turn = absence.judge(sequence, seconds, value, home, dryIsNormal(), verdict);
    switch (turn) {
      case STILL_AWAY -> {}
      case BACK -> {
        dryHabit.wetAgain();
        if (!Double.isNaN(absence.quietLevel())) {
          levels.visited(absence.quietLevel());
        }
        resume(absence.calm(), seconds);
      }
      case SETTLED -> {
        levels.settled(absence.readings().median());
        forgetUsual(absence.readings().median());
        resume(absence.readings(), seconds);
      }
      case GIVEN_UP -> restart(absence.readings().median());
    }
  }

  private void resume(Recent readings, double seconds) {
    accepted.clear();
    for (int back = Math.min(SHORT, readings.size()) - 1; back >= 0; back--) {
      accept(readings.sequence(back), seconds, readings.value(back), false);
    }
    state = State.STEADY;
  }

  private boolean dryIsNormal() {
    return settings.dryIsNormal() || dryHabit.normal();
  }

  /** What counts as a jump at that level, as a part of it. */
  private double bigChange(double level) {
    return Math.max(LEAST_JUMP, Math.max(6 * steps.high(), 3.5 * typical(level)));
  }

  private double typical(double level) {
    double resolution = settings.resolutionMilliSiemensPerCm();
    return Math.max(steps.typical(), Double.isNaN(resolution) ? 0 : resolution / level);
  }
}
