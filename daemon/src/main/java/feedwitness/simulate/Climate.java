package feedwitness.simulate;

/** Weather, and the borehole: 9 to 16 °C over the year with a trace of day and night. */
final class Climate {
  private static final int EVERY = 60;
  private static final double DAYS = 2 * Math.PI / Moment.DAY;

  private final Parameters parameters;
  private final Wander water;
  private final Wander strength;
  private final Wander cloud;
  private double sourceCelsius;
  private double sourceMineral;
  private double airCelsius;
  private double shedCelsius;
  private double sun;

  Climate(Parameters parameters, Chance chance, Moment start) {
    this.parameters = parameters;
    water = new Wander(chance.stream("source temperature"), 0.15, 6 * 3600);
    strength = new Wander(chance.stream("source strength"), 0.004, 2 * Moment.DAY);
    cloud = new Wander(chance.stream("cloud"), 1.2, 3 * 3600);
    refresh(start);
  }

  /** Once a simulated second; the weather looks up once a minute. */
  void step(Moment now) {
    if (Math.floorMod(now.second(), EVERY) == 0) {
      water.step(EVERY);
      strength.step(EVERY);
      cloud.step(EVERY);
      refresh(now);
    }
  }

  private void refresh(Moment now) {
    double late = StrictMath.cos(2 * Math.PI * (now.dayOfYear() - 226) / 365.25);
    double day = StrictMath.cos(DAYS * (now.secondOfDay() - 15 * 3600));
    sourceCelsius = 12.5 + 2.9 * late + 0.25 * day + water.value();
    sourceMineral =
        parameters.get(Parameter.SOURCE_STRENGTH) * (1 - 0.01 * late + strength.value());
    airCelsius = 17.5 + 3.5 * now.season() + (4 + 1.5 * now.season()) * day + cloud.value();
    shedCelsius = 13 + 5 * now.season() + 2 * day + 0.3 * cloud.value();
    double noon = StrictMath.cos(DAYS * (now.secondOfDay() - 13 * 3600));
    sun = Math.max(0, noon + 0.25 * now.season());
  }

  /** Water as it comes from the borehole now. */
  Liquid source() {
    return new Liquid(sourceMineral, 0, sourceCelsius);
  }

  double airCelsius() {
    return airCelsius;
  }

  double shedCelsius() {
    return shedCelsius;
  }

  /** Daylight, 0 at night to about 1.25 on a summer noon; unitless. */
  double sun() {
    return sun;
  }
}
