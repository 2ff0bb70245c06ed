package feedwitness.watch.drift;

/** What is known of the water before feed is added: measured now, usually, or by configuration. */
final class SourceWater {
  /** A source reading is good for so long: a borehole changes slowly. */
  static final double FRESH = 24 * 3600.0;

  private static final double PER_HOUR = 3600;
  private static final double USUAL_HOURS = 72;
  private static final int JUST = 5;

  private final double configured;
  private final RunningMedian just = new RunningMedian(JUST);
  private double usual = Double.NaN;
  private double celsius = Double.NaN;
  private double uncertainty = Double.NaN;
  private double at = Double.NEGATIVE_INFINITY;

  SourceWater(double configured) {
    this.configured = configured;
  }

  void take(double seconds, double conductivity25, double standardUncertainty, double degrees) {
    just.add(conductivity25);
    double now = just.median();
    if (Double.isNaN(usual)) {
      usual = now;
    } else {
      double passed = Math.min(PER_HOUR * USUAL_HOURS / 4, seconds - at);
      usual += (now - usual) * (1 - Math.exp(-passed / (PER_HOUR * USUAL_HOURS)));
    }
    celsius = degrees;
    uncertainty = standardUncertainty;
    at = seconds;
  }

  boolean everMeasured() {
    return !Double.isNaN(usual);
  }

  boolean fresh(double seconds) {
    return seconds - at <= FRESH;
  }

  /** Best knowledge now, mS/cm at 25 °C; 0 if there is none. */
  double now(double seconds) {
    if (everMeasured()) {
      return fresh(seconds) ? just.median() : usual;
    }
    return Double.isNaN(configured) ? 0 : configured;
  }

  /** What to name strengths by: the configured value if there is one. */
  double nominal(double seconds) {
    return Double.isNaN(configured) ? now(seconds) : configured;
  }

  /** °C, NaN unless just measured. */
  double celsius(double seconds) {
    return fresh(seconds) ? celsius : Double.NaN;
  }

  /** Standard uncertainty, mS/cm; NaN if unknown. */
  double uncertainty() {
    return uncertainty;
  }

  /** How far it lies from its usual, %; NaN if unknown. */
  double shiftPercent(double seconds) {
    return everMeasured() && fresh(seconds) ? 100 * (just.median() / usual - 1) : Double.NaN;
  }

  void write(StateWriter out) {
    just.write(out);
    out.number(usual).number(celsius).number(uncertainty).number(at);
  }

  void read(StateReader in) {
    just.read(in);
    usual = in.number();
    celsius = in.number();
    uncertainty = in.number();
    at = in.number();
  }
}
