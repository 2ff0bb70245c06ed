package feedwitness.quality;

/**
 * Readings that left what is usual, until they come back or settle elsewhere. What is usual is
 * frozen meanwhile.
 */
final class Absence {
  static final double DRY = 0.1;
  private static final double BACK_ABOVE = 0.85;
  private static final double BACK_BELOW = 1.3;
  private static final double CALM = 0.05;
  private static final int CALM_READINGS = 3;
  private static final int LONGEST_SPIKE = 3;
  private static final int SETTLED_READINGS = 32;
  private static final double SETTLED_SECONDS = 1200;
  private static final double SETTLED_SPREAD = 0.04;
  private static final double VERY_COARSE = 0.004;
  private static final double HIGHEST_SETTLED = 3;
  private static final double QUIET_SPREAD = 0.02;
  private static final int QUIET_READINGS = 5;
  private static final double GIVE_UP_SECONDS = 7 * 86_400.0;

  /** How it stands after a reading. */
  enum Turn {
    STILL_AWAY,
    BACK,
    SETTLED,
    GIVEN_UP
  }

  private final Recent readings = new Recent(SETTLED_READINGS);
  private final Recent first = new Recent(LONGEST_SPIKE);
  private final Recent calm = new Recent(CALM_READINGS);
  private double before;
  private double usual;
  private double former;
  private double bigChange;
  private double coarseStep;
  private boolean rose;
  private double since;
  private double lastKept;
  private int count;

  /**
   * Begins; levels in mS/cm.
   *
   * @param former what was usual before it rose to far more; NaN if it did not
   * @param bigChange what counts as a jump here, as a part of the level
   * @param coarseStep the sensor's usual step, as a part of the level
   */
  void begin(
      double seconds,
      double before,
      double usual,
      double former,
      double bigChange,
      double coarseStep,
      boolean up) {
    readings.clear();
    first.clear();
    calm.clear();
    this.before = before;
    this.usual = usual;
    this.former = former;
    this.bigChange = bigChange;
    this.coarseStep = coarseStep;
    rose = up;
    since = seconds;
    lastKept = Double.NEGATIVE_INFINITY;
    count = 0;
  }

  /**
   * Judges the next reading.
   *
   * @param home whether it is at a level known to be normal here
   */
  Turn judge(
      long sequence,
      double seconds,
      double value,
      boolean home,
      boolean dryIsNormal,
      Verdict verdict) {
    count++;
    if (count <= LONGEST_SPIKE) {
      first.add(sequence, seconds, value);
    }
    if (near(value, before) || near(value, usual) || home) {
      return comingBack(sequence, seconds, value, verdict);
    }
    verdict.earlier(calm, QualityFlag.ERRATIC);
    calm.clear();
    if (seconds - lastKept >= SETTLED_SECONDS / SETTLED_READINGS) {
      readings.add(sequence, seconds, value);
      lastKept = seconds;
    }
    verdict.now(flagOf(value, dryIsNormal));
    if (settled()) {
      return Turn.SETTLED;
    }
    return seconds - since > GIVE_UP_SECONDS ? Turn.GIVEN_UP : Turn.STILL_AWAY;
  }

  private Turn comingBack(long sequence, double seconds, double value, Verdict verdict) {
    double jump = Math.max(CALM, bigChange) * value;
    if (calm.size() > 0 && Math.abs(value - calm.value(0)) > jump) {
      verdict.earlier(calm, QualityFlag.ERRATIC);
      calm.clear();
    }
    calm.add(sequence, seconds, value);
    verdict.now(QualityFlag.UNKNOWN);
    if (!calm.full()) {
      return Turn.STILL_AWAY;
    }
    if (count - CALM_READINGS <= LONGEST_SPIKE) {
      for (int back = first.size() - 1; back >= first.size() - (count - CALM_READINGS); back--) {
        verdict.earlier(first.sequence(back), QualityFlag.SPIKE);
      }
    }
    return Turn.BACK;
  }

  private boolean near(double value, double level) {
    return value >= BACK_ABOVE * level && value <= BACK_BELOW * level;
  }

  boolean dry(double value) {
    double least = Math.min(before, usual);
    return value < DRY * (former < least ? former : least);
  }

  private QualityFlag flagOf(double value, boolean dryIsNormal) {
    if (dry(value)) {
      return dryIsNormal ? QualityFlag.UNKNOWN : QualityFlag.IN_AIR;
    }
    if (value < before || value < usual) {
      return QualityFlag.LOW_HOLD;
    }
    return rose && readings.size() <= LONGEST_SPIKE
        ? QualityFlag.RATE_OF_CHANGE
        : QualityFlag.ERRATIC;
  }

  private boolean settled() {
    if (!readings.full() || readings.span() < SETTLED_SECONDS * 0.9 || dry(readings.median())) {
      return false;
    }
    double level = readings.median();
    double spread = readings.quantile(0.95) - readings.quantile(0.05);
    // A fine sensor that gives one number all the time is stuck or at its end, not settled.
    boolean alive = spread > 0 || (coarseStep > VERY_COARSE && level < HIGHEST_SETTLED * usual);
    return alive && spread <= Math.max(SETTLED_SPREAD, Math.min(2 * bigChange, 0.08)) * level;
  }

  /** The level of a quiet visit elsewhere; NaN if it was none. */
  double quietLevel() {
    if (readings.size() < QUIET_READINGS || dry(readings.median())) {
      return Double.NaN;
    }
    double level = readings.median();
    double spread = readings.quantile(0.75) - readings.quantile(0.25);
    return spread <= QUIET_SPREAD * level ? level : Double.NaN;
  }

  /** The readings that came back. */
  Recent calm() {
    return calm;
  }

  /** The readings away. */
  Recent readings() {
    return readings;
  }
}
