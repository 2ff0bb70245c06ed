package feedwitness.quality;

/** Tests of a temperature against its own past and against a neighbour's. °C and K. */
final class TemperatureTests {
  private static final int START_READINGS = 5;
  private static final int SHORT = 5;
  private static final double LEAST_JUMP = 2.5;
  private static final double LEAST_JITTER = 0.4;
  private static final int SETTLED_READINGS = 32;
  private static final double SETTLED_SECONDS = 7200;
  private static final double DEFAULT_NUMBER_AWAY = 2;
  private static final double LEAST_PER_KELVIN = 0.01;
  private static final double MOST_PER_KELVIN = 0.03;
  private static final int NEIGHBOUR_READINGS = 32;
  private static final double NEIGHBOUR_SECONDS = 7200;
  private static final double UNLIKE_KELVIN = 3;
  private static final int UNLIKE_READINGS = 5;

  private final JudgeSettings settings;
  private final Recent accepted = new Recent(SHORT);
  private final Recent away = new Recent(SETTLED_READINGS);
  private final Recent apart = new Recent(NEIGHBOUR_READINGS);
  private final Steps steps = new Steps();
  private final Jitter jitter = new Jitter();
  private int started;
  private double lastKept = Double.NEGATIVE_INFINITY;
  private double learntJump = LEAST_JUMP;
  private double lastConductivity = Double.NaN;
  private int unlike;
  private double lastApart = Double.NEGATIVE_INFINITY;

  TemperatureTests(JudgeSettings settings) {
    this.settings = settings;
  }

  /** Nothing is amiss at present. */
  boolean steady() {
    return away.size() == 0 && !jitter.erratic();
  }

  /** A pause: what follows need not continue what was. */
  void pause(boolean isLong) {
    jitter.clear();
    lastConductivity = Double.NaN;
    if (isLong) {
      started = 0;
      accepted.clear();
    }
  }

  /** The last temperature believed, °C; NaN if there is none. */
  double believed() {
    return accepted.median();
  }

  /**
   * Judges one; returns whether it may be used to refer a conductivity.
   *
   * @param milliSiemensPerCm the conductivity beside it, NaN if none
   */
  boolean judge(
      long sequence,
      double seconds,
      double celsius,
      double milliSiemensPerCm,
      double neighbour,
      Verdict verdict) {
    double before = lastConductivity;
    lastConductivity = milliSiemensPerCm;
    boolean sound = fits(sequence, seconds, celsius, before, verdict);
    if (!Double.isNaN(neighbour) && !likeNeighbour(sequence, seconds, celsius - neighbour)) {
      verdict.now(QualityFlag.TEMPERATURE_UNLIKE_NEIGHBOUR);
      sound = false;
    }
    return sound;
  }

  private boolean fits(
      long sequence, double seconds, double celsius, double before, Verdict verdict) {
    if (started < START_READINGS) {
      started++;
      accept(sequence, seconds, celsius);
      return true;
    }
    double level = accepted.median();
    double away = Math.abs(celsius - level);
    if (celsius == 0 && away > DEFAULT_NUMBER_AWAY) {
      verdict.now(QualityFlag.TEMPERATURE_IMPOSSIBLE);
      return false;
    }
    if (away > jump()) {
      if (!waterAgrees(celsius - accepted.value(0), before, lastConductivity)) {
        return jumped(sequence, seconds, celsius, verdict);
      }
      accepted.clear();
    }
    this.away.clear();
    boolean was = jitter.erratic();
    jitter.add(sequence, seconds, celsius);
    double big = Math.max(LEAST_JITTER, Math.max(2 * steps.high(), 1.5 * steps.large()));
    if (jitter.judge(big, Double.POSITIVE_INFINITY)) {
      verdict.now(QualityFlag.TEMPERATURE_ERRATIC);
      if (!was) {
        jitter.sinceFirstBigStep(big, at -> verdict.earlier(at, QualityFlag.TEMPERATURE_ERRATIC));
      }
      return false;
    }
    accept(sequence, seconds, celsius);
    return true;
  }

  private double jump() {
    return Math.max(learntJump, Math.max(8 * steps.high(), 3 * steps.typical()));
  }

  /** Raw conductivity moved by some 2 %/K as well: other water came, the sensor is sound. */
  private boolean waterAgrees(double kelvin, double before, double now) {
    if (settings.indicatedAt25() || !(before > 0) || !(now > 0)) {
      return false;
    }
    double perKelvin = (Math.log(now) - Math.log(before)) / kelvin;
    return perKelvin >= LEAST_PER_KELVIN && perKelvin <= MOST_PER_KELVIN;
  }

  private boolean jumped(long sequence, double seconds, double celsius, Verdict verdict) {
    verdict.now(QualityFlag.TEMPERATURE_JUMP);
    if (seconds - lastKept >= SETTLED_SECONDS / SETTLED_READINGS) {
      away.add(sequence, seconds, celsius);
      lastKept = seconds;
    }
    boolean calm = away.quantile(0.95) - away.quantile(0.05) < LEAST_JUMP;
    if (away.full() && away.span() >= 0.9 * SETTLED_SECONDS && calm) {
      // It stays there: a probe moved, or water that does change so fast. Learn from it.
      learntJump = Math.max(learntJump, 1.2 * Math.abs(celsius - accepted.median()));
      away.clear();
      accepted.clear();
      accept(sequence, seconds, celsius);
    }
    return false;
  }

  private void accept(long sequence, double seconds, double celsius) {
    if (accepted.size() > 0) {
      steps.add(Math.abs(celsius - accepted.value(0)));
    }
    accepted.add(sequence, seconds, celsius);
  }

  private boolean likeNeighbour(long sequence, double seconds, double difference) {
    if (apart.full() && Math.abs(difference - apart.median()) > UNLIKE_KELVIN) {
      unlike++;
    } else {
      unlike = 0;
      // Not every reading, or a slow parting would be taken for how it always was.
      if (seconds - lastApart >= NEIGHBOUR_SECONDS / NEIGHBOUR_READINGS || seconds < lastApart) {
        apart.add(sequence, seconds, difference);
        lastApart = seconds;
      }
    }
    return unlike < UNLIKE_READINGS;
  }
}
