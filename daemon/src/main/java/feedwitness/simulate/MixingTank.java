package feedwitness.simulate;

import java.util.Random;

/**
 * The mixing tank of the standing bed: two halves that a recirculating pump exchanges. Salts are
 * poured in beside the pump, where the probe hangs, so a fresh batch overshoots there and settles
 * with a time constant of a quarter of the volume over the pump's flow (6 minutes when full).
 */
final class MixingTank {
  private static final double FILL_PER_MINUTE = 25;
  private static final double DRAW_PER_MINUTE = 8;
  private static final int DRAW_SECONDS = 12 * 60;
  private static final double LEFT_FOR_PUMP = 40;
  private static final double RESTING_EXCHANGE = 0.3;
  private static final double DISSOLVING_SECONDS = 150;
  private static final double SHED_SECONDS = 30 * 3600;

  private final Parameters parameters;
  private final Recipe recipe;
  private final Random random;
  private final Vessel near;
  private final Vessel far;
  private double undissolved;
  private double toFill;
  private double batchStrength;
  private int mixSeconds;
  private int drawSeconds;

  MixingTank(Parameters parameters, Recipe recipe, Chance chance, Climate climate) {
    this.parameters = parameters;
    this.recipe = recipe;
    random = chance.stream("tank weighing");
    Liquid water = climate.source();
    double strength = parameters.get(Parameter.TANK_STRENGTH);
    Liquid feed =
        new Liquid(
            water.mineral(),
            recipe.tankGramsPerLitre(water.mineral(), strength),
            climate.shedCelsius());
    double half = 0.15 * parameters.get(Parameter.TANK_LITRES);
    near = new Vessel(half, feed);
    far = new Vessel(half, feed);
  }

  /** The grower fills up with source water, then pours in what the volume needs. */
  void batch(double strength) {
    batchStrength = strength;
    toFill = 0.97 * parameters.get(Parameter.TANK_LITRES) - litres();
  }

  /** A helper adds plain water; what does not fit is not added. */
  void topUp(double litres) {
    toFill = Math.min(litres, parameters.get(Parameter.TANK_LITRES) - litres());
  }

  double litres() {
    return near.litres() + far.litres();
  }

  /** What the probe hangs in. */
  Liquid atProbe() {
    return near.liquid();
  }

  /** What it would be if mixed through and dissolved. */
  Liquid mean() {
    double volume = litres();
    return new Liquid(
        (near.mineral() + far.mineral()) / volume,
        (near.salt() + far.salt() + undissolved) / volume,
        near.liquid().celsius());
  }

  Parcel held() {
    return new Parcel(
        litres(), near.mineral() + far.mineral(), near.salt() + far.salt() + undissolved, 0);
  }

  /** One simulated second. */
  void step(Moment now, Climate climate, Totals totals) {
    routine(now);
    fill(climate, totals);
    draw(totals);
    dissolve();
    exchange(now);
    near.relax(climate.shedCelsius(), 1 / SHED_SECONDS);
    far.relax(climate.shedCelsius(), 1 / SHED_SECONDS);
  }

  private void routine(Moment now) {
    if (now.is(7, 30) && Recipe.mixes(now.dayOfWeek())) {
      batch(parameters.get(Parameter.TANK_STRENGTH));
    }
    if (now.is(6, 0) || now.is(18, 30)) {
      drawSeconds = (int) (DRAW_SECONDS * (0.65 + 0.35 * now.season()));
    }
  }

  private void fill(Climate climate, Totals totals) {
    if (toFill > 0) {
      double litres = Math.min(toFill, FILL_PER_MINUTE / 60);
      near.add(totals.in(Parcel.of(litres, climate.source())));
      far.add(near.draw(litres / 2));
      toFill -= litres;
    }
    if (toFill <= 0 && batchStrength > 0) {
      pourIn(totals);
    }
  }

  private void pourIn(Totals totals) {
    Liquid there = mean();
    double needed = recipe.tankGramsPerLitre(there.mineral(), batchStrength) - there.salt();
    double error = parameters.share(Parameter.TANK_WEIGHING) * random.nextGaussian();
    double grams = Math.max(0, needed * litres() * (1 + error));
    totals.saltIn(grams);
    undissolved += grams;
    batchStrength = 0;
    mixSeconds = 45 * 60;
  }

  private void draw(Totals totals) {
    if (drawSeconds > 0) {
      drawSeconds--;
      double litres = DRAW_PER_MINUTE / 60;
      if (litres() - litres > LEFT_FOR_PUMP) {
        totals.out(far.draw(litres));
        far.add(near.draw(litres / 2));
      }
    }
  }

  private void dissolve() {
    if (undissolved > 0) {
      double grams = undissolved < 1e-6 ? undissolved : undissolved / DISSOLVING_SECONDS;
      undissolved -= grams;
      near.dissolve(grams);
    }
  }

  private void exchange(Moment now) {
    int hour = now.secondOfDay() / 3600;
    boolean pumping = mixSeconds > 0 || (hour >= 6 && hour < 20);
    mixSeconds = Math.max(0, mixSeconds - 1);
    double litres = (pumping ? parameters.get(Parameter.TANK_PUMP) : RESTING_EXCHANGE) / 60;
    Parcel there = near.draw(litres);
    Parcel back = far.draw(litres);
    near.add(back);
    far.add(there);
  }
}
