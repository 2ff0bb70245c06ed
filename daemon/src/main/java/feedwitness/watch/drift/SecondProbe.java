package feedwitness.watch.drift;

/** What another probe in the same liquid read last, mS/cm at 25 °C. */
final class SecondProbe {
  private static final int JUST = 5;

  /** Older than this it says nothing of an event. */
  private static final double FRESH = 120;

  private final RunningMedian just = new RunningMedian(JUST);
  private double at = Double.NEGATIVE_INFINITY;

  void take(double seconds, double conductivity25) {
    if (seconds - at > FRESH) {
      just.clear();
    }
    just.add(conductivity25);
    at = seconds;
  }

  /** NaN unless it has just read. */
  double now(double seconds) {
    return seconds - at <= FRESH ? just.median() : Double.NaN;
  }

  void write(StateWriter out) {
    just.write(out);
    out.number(at);
  }

  void read(StateReader in) {
    just.read(in);
    at = in.number();
  }
}
