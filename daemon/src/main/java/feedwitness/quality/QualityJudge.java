package feedwitness.quality;

/**
 * Judges the readings of one point by what went before: causal, in constant memory, without a
 * clock. Learns the sensor's own step, its noise, the usual level and the sampling interval, from 1
 * s to 15 min. Until it has learnt, its answer is {@link QualityFlag#UNKNOWN}. Statistics are
 * medians and quantiles over bounded windows; a change that lasts is always followed in the end.
 * For one thread.
 */
public final class QualityJudge {
  /** A flag may be added to a reading up to this many readings later, but for a stuck number. */
  public static final int REACH = 32;

  private static final double PAUSE_INTERVALS = 6;
  private static final double LEAST_PAUSE_SECONDS = 30;
  private static final double LONG_PAUSE_SECONDS = 12 * 3600.0;
  private static final double PER_KELVIN = 0.019;

  private final JudgeSettings settings;
  private final ConductivityTests conductivity;
  private final TemperatureTests temperature;
  private final Repeats conductivityRepeats = new Repeats();
  private final Repeats temperatureRepeats = new Repeats();
  private final Repeats bothRepeat = new Repeats();
  private final Unmoved unmoved = new Unmoved();
  private final Recent intervals = new Recent(16);
  private final Recent numbers = new Recent(REACH + 1);
  private double lastSeconds = Double.NaN;
  private boolean bothStuck;
  private boolean stuck;
  private boolean temperatureStuck;

  public QualityJudge(JudgeSettings settings) {
    this.settings = settings;
    this.conductivity = new ConductivityTests(settings);
    this.temperature = new TemperatureTests(settings);
  }

  /** Judges the next reading. */
  public Judgement judge(Observation seen) {
    follow(seen.seconds());
    numbers.add(seen.sequence(), seen.seconds(), seen.milliSiemensPerCm());
    Verdict verdict = new Verdict(numbers);
    boolean dead = seen.known().has(QualityFlag.BOTH_ZERO) || seen.known().has(QualityFlag.MISSING);
    if (dead) {
      interrupt();
      return verdict.judgement();
    }
    boolean sound = !Double.isNaN(seen.celsius()) && judgeTemperature(seen, verdict);
    if (!Double.isNaN(seen.milliSiemensPerCm())) {
      judgeConductivity(seen, sound, verdict);
    }
    judgeBoth(seen, verdict);
    return verdict.judgement();
  }

  private void follow(double seconds) {
    double passed = seconds - lastSeconds;
    lastSeconds = seconds;
    if (Double.isNaN(passed)) {
      return;
    }
    double pause = Math.max(LEAST_PAUSE_SECONDS, PAUSE_INTERVALS * intervals.median());
    if (passed <= 0 || (intervals.full() && passed > pause)) {
      boolean isLong = passed > LONG_PAUSE_SECONDS;
      conductivity.pause(isLong);
      temperature.pause(isLong);
      interrupt();
    }
    if (passed > 0) {
      intervals.add(0, 0, passed);
    }
  }

  private void interrupt() {
    conductivityRepeats.interrupt();
    temperatureRepeats.interrupt();
    bothRepeat.interrupt();
    unmoved.interrupt();
  }

  private boolean judgeTemperature(Observation seen, Verdict verdict) {
    if (seen.known().has(QualityFlag.TEMPERATURE_IMPOSSIBLE)) {
      return false;
    }
    double celsius = seen.celsius();
    temperatureRepeats.add(seen.sequence(), seen.seconds(), celsius, 0, temperature.steady());
    boolean is = temperatureRepeats.stuck(seen.seconds());
    if (is) {
      verdict.now(QualityFlag.TEMPERATURE_STUCK);
      if (!temperatureStuck) {
        verdict.since(temperatureRepeats.first(), QualityFlag.TEMPERATURE_STUCK);
      }
    }
    temperatureStuck = is;
    return temperature.judge(
        seen.sequence(),
        seen.seconds(),
        celsius,
        seen.milliSiemensPerCm(),
        seen.neighbourCelsius(),
        verdict);
  }

  private void judgeConductivity(Observation seen, boolean sound, Verdict verdict) {
    double indicated = seen.milliSiemensPerCm();
    double celsius = sound ? seen.celsius() : temperature.believed();
    if (!settings.indicatedAt25()) {
      unmoved.add(seen.seconds(), indicated, sound ? celsius : Double.NaN, conductivity.steady());
    }
    conductivityRepeats.add(seen.sequence(), seen.seconds(), indicated, 0, conductivity.steady());
    double factor =
        settings.indicatedAt25() || Double.isNaN(celsius)
            ? 1
            : 1 / (1 + PER_KELVIN * (Math.max(-2, Math.min(60, celsius)) - 25));
    conductivity.judge(seen.sequence(), seen.seconds(), indicated * factor, verdict);
  }

  private void judgeBoth(Observation seen, Verdict verdict) {
    int before = bothRepeat.run();
    bothRepeat.add(
        seen.sequence(),
        seen.seconds(),
        seen.milliSiemensPerCm(),
        seen.celsius(),
        conductivity.steady() && temperature.steady());
    boolean both = !Double.isNaN(seen.celsius()) && bothRepeat.longerThanEver(seen.seconds());
    if (bothStuck && bothRepeat.run() < before) {
      // The instrument lives again: what its conductivity did before is no longer evidence.
      conductivityRepeats.interrupt();
      unmoved.interrupt();
    }
    boolean wasBoth = bothStuck;
    bothStuck = both;
    boolean alone = conductivityRepeats.stuck(seen.seconds()) || unmoved.stuck(seen.seconds());
    // A dry probe reads the same nothing for days.
    boolean is = seen.milliSiemensPerCm() > 0 && (both || alone);
    if (is) {
      verdict.now(QualityFlag.STUCK);
      if (!stuck) {
        verdict.since(both ? bothRepeat.first() : conductivityRepeats.first(), QualityFlag.STUCK);
      }
      if (both) {
        verdict.now(QualityFlag.TEMPERATURE_STUCK);
        if (!wasBoth) {
          verdict.since(bothRepeat.first(), QualityFlag.TEMPERATURE_STUCK);
        }
      }
    }
    stuck = is;
  }
}
