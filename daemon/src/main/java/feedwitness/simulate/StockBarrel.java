package feedwitness.simulate;

import java.time.DayOfWeek;
import java.util.Random;

/**
 * The barrel of concentrate. The grower fills it on Monday, and whenever a day's use is not left.
 */
final class StockBarrel {
  private final Parameters parameters;
  private final Recipe recipe;
  private final Random random;
  private final Vessel vessel;
  private boolean neglected;

  StockBarrel(Parameters parameters, Recipe recipe, Chance chance, Climate climate) {
    this.parameters = parameters;
    this.recipe = recipe;
    random = chance.stream("stock weighing");
    Liquid stock =
        new Liquid(climate.source().mineral(), recipe.stockGramsPerLitre(), climate.shedCelsius());
    vessel = new Vessel(0.9 * parameters.get(Parameter.BARREL_LITRES), stock);
  }

  double litres() {
    return vessel.litres();
  }

  /** Feed in the stock, g/L; in an empty barrel what was in it last. */
  double gramsPerLitre() {
    return vessel.liquid().salt();
  }

  Parcel held() {
    return new Parcel(vessel.litres(), vessel.mineral(), vessel.salt(), 0);
  }

  Parcel draw(double litres) {
    return vessel.draw(litres);
  }

  /** Runs out now and is not looked after until {@link #refill}. */
  void runOut(Totals totals) {
    totals.out(vessel.draw(vessel.litres()));
    neglected = true;
  }

  /** Fills up with stock of this share of the intended strength; 1 is right. */
  void refill(double share, Climate climate, Totals totals) {
    neglected = false;
    double room = parameters.get(Parameter.BARREL_LITRES) - vessel.litres();
    double error = parameters.share(Parameter.BARREL_WEIGHING) * random.nextGaussian();
    Liquid stock =
        new Liquid(
            climate.source().mineral(),
            recipe.stockGramsPerLitre() * share * (1 + error),
            climate.shedCelsius());
    vessel.add(totals.in(Parcel.of(room, stock)));
  }

  /** The grower's round at 06:45. */
  void step(Moment now, Climate climate, Totals totals) {
    boolean low = vessel.litres() < 0.22 * parameters.get(Parameter.BARREL_LITRES);
    if (now.is(6, 45) && !neglected && (low || now.dayOfWeek() == DayOfWeek.MONDAY)) {
      refill(1, climate, totals);
    }
  }
}
