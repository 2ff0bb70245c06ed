package feedwitness.simulate;

import feedwitness.simulate.IrrigationPlan.Watering;
import java.util.List;
import java.util.Random;

/**
 * Source water through the injector into the glasshouse line: three small mixing volumes between
 * injector and probe even out the strokes and make the start of an event gradual. Between events
 * the line holds its water and takes the temperature of the air. When the barrel is empty the
 * injector sucks air: bubbles at the probe for about two minutes of flow, then source water.
 */
final class FeedLine {
  private static final int CELLS = 3;
  private static final double CELL_LITRES = 1.2;
  private static final double AIR_SECONDS = 40 * 60;
  private static final double BUBBLING_LITRES = 40;
  private static final int BUBBLE_SECONDS = 5;

  private final Parameters parameters;
  private final Recipe recipe;
  private final Chance chance;
  private final Random bubbles;
  private final StockBarrel barrel;
  private final Injector injector;
  private final List<Vessel> cells;
  private IrrigationPlan plan;
  private double flow;
  private int running;
  private double bubbled;
  private boolean air;
  private double share = 1;
  private Recipe.Strength setting = Recipe.Strength.GROWING_ON;

  FeedLine(Parameters parameters, Recipe recipe, Chance chance, Climate climate, Moment start) {
    this.parameters = parameters;
    this.recipe = recipe;
    this.chance = chance;
    bubbles = chance.stream("bubbles");
    barrel = new StockBarrel(parameters, recipe, chance, climate);
    injector = new Injector(parameters, chance);
    Liquid feed =
        new Liquid(
            climate.source().mineral(),
            recipe.stockGramsPerLitre() / recipe.ratio(Recipe.Strength.GROWING_ON),
            climate.airCelsius());
    cells =
        List.of(
            new Vessel(CELL_LITRES, feed),
            new Vessel(CELL_LITRES, feed),
            new Vessel(CELL_LITRES, feed));
    plan = IrrigationPlan.of(start, chance);
  }

  /** One simulated second; returns what reaches the plants. */
  Parcel step(Moment now, Climate climate, boolean bypass, Totals totals) {
    if (plan.dayNumber() != now.dayNumber()) {
      plan = IrrigationPlan.of(now, chance);
    }
    barrel.step(now, climate, totals);
    injector.age();
    Watering watering = current(now.secondOfDay());
    if (watering == null) {
      flow = 0;
      running = 0;
      air = false;
      cells.forEach(cell -> cell.relax(climate.airCelsius(), 1 / AIR_SECONDS));
      return Parcel.NONE;
    }
    setting = watering.strength();
    flow = parameters.get(Parameter.LINE_FLOW) * setting.flowShare() * watering.flow();
    Parcel moving = totals.in(Parcel.of(flow / 60, climate.source()));
    if (!bypass && setting != Recipe.Strength.PLAIN) {
      moving = moving.plus(inject(moving.litres()));
    } else {
      air = false;
      share = 0;
    }
    running++;
    return push(moving);
  }

  private @org.jspecify.annotations.Nullable Watering current(int secondOfDay) {
    for (Watering watering : plan.waterings()) {
      if (watering.covers(secondOfDay)) {
        return watering;
      }
    }
    return null;
  }

  private Parcel inject(double water) {
    double wanted = injector.inject(water, flow, recipe.ratio(setting), running);
    Parcel stock = barrel.draw(wanted);
    share = barrel.litres() > 0 ? injector.share(flow, running) : 0;
    if (barrel.litres() > 0) {
      bubbled = 0;
      air = false;
    } else {
      bubbled += water;
      if (running % BUBBLE_SECONDS == 0) {
        air = bubbled < BUBBLING_LITRES && bubbles.nextDouble() < 0.75;
      }
    }
    return stock;
  }

  private Parcel push(Parcel inflow) {
    Parcel moving = inflow;
    for (int i = 0; i < CELLS; i++) {
      Vessel cell = cells.get(i);
      cell.add(moving);
      moving = cell.draw(inflow.litres());
    }
    return moving;
  }

  StockBarrel barrel() {
    return barrel;
  }

  Injector injector() {
    return injector;
  }

  IrrigationPlan plan() {
    return plan;
  }

  /** Flow now, L/min; 0 between events. */
  double flow() {
    return flow;
  }

  /** What the injector is set to, also between events. */
  Recipe.Strength setting() {
    return setting;
  }

  /** What it injects as a share of what it is set to, when water flowed last; 0 if nothing. */
  double injectedShare() {
    return share;
  }

  /** Whether bubbles pass the probe. */
  boolean air() {
    return air;
  }

  /** What the probe hangs in, bubbles apart. */
  Liquid atProbe() {
    return cells.get(CELLS - 1).liquid();
  }

  Parcel held() {
    Parcel all = barrel.held();
    for (Vessel cell : cells) {
      all = all.plus(new Parcel(cell.litres(), cell.mineral(), cell.salt(), 0));
    }
    return all;
  }
}
