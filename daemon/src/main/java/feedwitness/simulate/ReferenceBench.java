package feedwitness.simulate;

/**
 * Ten pots that get their share of each watering, transpire water and some of its feed, and drain
 * what they cannot hold into a tray emptied at midnight. The tray is the truth for hand readings of
 * {@code drain}. Plants leave behind a tenth of the feed and more of the minerals that come with
 * the water they take, so drain is stronger than feed.
 */
final class ReferenceBench {
  private static final double SHARE_OF_LINE = 0.007;
  private static final double HELD_LITRES = 12;
  private static final double WILTING_LITRES = 4;
  private static final double TRANSPIRED = 0.85;
  private static final double FEED_TAKEN = 0.9;
  private static final double MINERAL_TAKEN = 0.85;

  private final Parameters parameters;
  private final Chance chance;
  private final Vessel pots;
  private final Vessel tray;
  private long day;
  private double perSun;

  ReferenceBench(Parameters parameters, Chance chance, Liquid feed) {
    this.parameters = parameters;
    this.chance = chance;
    pots = new Vessel(HELD_LITRES, feed);
    tray = new Vessel(0, feed);
  }

  /** One simulated second with what the line delivered in it. */
  void step(Moment now, Climate climate, FeedLine line, Parcel delivered, Totals totals) {
    if (day != now.dayNumber()) {
      day = now.dayNumber();
      perSun = perSun(now, line.plan());
      totals.out(tray.draw(tray.litres()));
    }
    Parcel share = delivered.part(SHARE_OF_LINE);
    totals.out(delivered.part(1 - SHARE_OF_LINE));
    pots.add(share);
    transpire(climate, line.atProbe(), totals);
    tray.add(pots.draw(pots.litres() - HELD_LITRES));
    pots.relax(climate.airCelsius(), 1 / 7200.0);
    tray.relax(climate.airCelsius(), 1 / 1800.0);
  }

  /** Litres a second for each unit of daylight, so that the day's total fits its supply. */
  private double perSun(Moment now, IrrigationPlan plan) {
    double low = 0.25 * now.season();
    double edge = StrictMath.acos(-low);
    double meanSun = (StrictMath.sin(edge) + low * edge) / Math.PI;
    double supply = SHARE_OF_LINE * plan.litres(parameters.get(Parameter.LINE_FLOW));
    double weather = 0.85 + 0.25 * chance.stream("bench", now.dayNumber()).nextDouble();
    return TRANSPIRED * weather * supply / (meanSun * Moment.DAY);
  }

  private void transpire(Climate climate, Liquid feed, Totals totals) {
    double litres = climate.sun() * perSun;
    if (litres > 0 && pots.litres() > WILTING_LITRES) {
      totals.out(
          pots.transpire(
              litres, FEED_TAKEN * feed.salt() * litres, MINERAL_TAKEN * feed.mineral() * litres));
    }
  }

  /** Run-off since midnight, L. */
  double runOff() {
    return tray.litres();
  }

  /** What is in the tray, or was last. */
  Liquid drain() {
    return tray.liquid();
  }

  Parcel held() {
    return new Parcel(
        pots.litres() + tray.litres(),
        pots.mineral() + tray.mineral(),
        pots.salt() + tray.salt(),
        0);
  }
}
