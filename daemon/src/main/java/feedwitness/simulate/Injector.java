package feedwitness.simulate;

/**
 * A proportional injector driven by the water: each stroke of the piston passes a fixed volume of
 * water and throws in one pulse of stock. The share it really injects depends on flow (leaks past
 * the piston at a trickle), on wear, on the first seconds after a start, and wanders by itself.
 */
final class Injector {
  private static final double WANDER_SECONDS = 2 * 3600;
  private static final int WANDER_EVERY = 60;

  private final Parameters parameters;
  private final Wander wander;
  private double passed;
  private double worn;
  private double sag;
  private long strokes;
  private int second;

  Injector(Parameters parameters, Chance chance) {
    this.parameters = parameters;
    wander =
        new Wander(
            chance.stream("injector"), parameters.share(Parameter.INJECTOR_WANDER), WANDER_SECONDS);
  }

  /** Time passes, flowing or not. */
  void age() {
    worn += parameters.share(Parameter.INJECTOR_WEAR) / Moment.DAY;
    if (second++ % WANDER_EVERY == 0) {
      wander.step(WANDER_EVERY);
    }
  }

  /** A sticking check valve: this share of the stock is lost until service, 0 to 1. */
  void sag(double share) {
    sag = share;
  }

  double sag() {
    return sag;
  }

  /** New seals and valves. */
  void service() {
    sag = 0;
    worn = 0;
  }

  /** Strokes since the nursery began. */
  long strokes() {
    return strokes;
  }

  /**
   * Stock the strokes of this much water would throw in, L.
   *
   * @param water litres that pass now
   * @param perMinute flow, L/min
   * @param ratio litres of feed from one of stock, above 1; infinite when turned off
   * @param running seconds since the water began to flow
   */
  double inject(double water, double perMinute, double ratio, int running) {
    double stroke = parameters.get(Parameter.INJECTOR_STROKE);
    passed += water;
    int now = (int) (passed / stroke);
    passed -= now * stroke;
    strokes += now;
    return now * stroke / (ratio - 1) * share(perMinute, running);
  }

  /** What it injects, as a share of what it is set to; 1 is right. */
  double share(double perMinute, int running) {
    double trickle = 0.08 * StrictMath.exp(-perMinute / 3);
    double priming = 0.35 * StrictMath.exp(-running / 8.0);
    return (1 - trickle) * (1 - priming) * (1 - worn) * (1 - sag) * Math.max(0, 1 + wander.value());
  }
}
