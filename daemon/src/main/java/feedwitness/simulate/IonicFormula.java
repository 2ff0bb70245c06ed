package feedwitness.simulate;

import feedwitness.solution.Composition;
import feedwitness.solution.ConductivityModel;
import feedwitness.solution.ConductivityOutcome.Predicted;
import feedwitness.solution.FeedTable;
import java.util.HashMap;
import java.util.Map;

/**
 * The ionic model of {@link feedwitness.solution}, for House Feed in borehole water more or less
 * diluted or concentrated. Asked several times each simulated second, so it is tabled: one table
 * for each tenth of mS/cm of mineral, made when first needed, and straight lines between. The
 * answers do not depend on what was asked before. Not for two threads at once.
 *
 * <p>Feed to 120 g/L. Beyond 0 to 45 °C, where the model ends, by 1.9 %/K.
 */
final class IonicFormula implements ConductivityFormula {
  static final double MAX_GRAMS_PER_LITRE = 120;
  private static final double MINERAL_STEP = 0.1;
  private static final double BEYOND_PER_KELVIN = 0.019;
  private static final double REFERENCE = 25;

  /** Shares of borehole water: enough for the hardest a schedule may ask for. */
  private static final double MOST_BOREHOLE = 40;

  private static final int HALVINGS = 60;

  private final ConductivityModel model = new ConductivityModel();
  private final double mostPerKilogram = HouseFeed.gramsPerKilogram(MAX_GRAMS_PER_LITRE);
  private final Map<Integer, FeedTable> tables = new HashMap<>();

  @Override
  public double at25(Liquid liquid) {
    return conductivity(liquid.mineral(), liquid.salt(), REFERENCE);
  }

  @Override
  public double raw(Liquid liquid) {
    return conductivity(liquid.mineral(), liquid.salt(), liquid.celsius());
  }

  @Override
  public double saltFor(double mineral, double strength) {
    double low = 0;
    double high = MAX_GRAMS_PER_LITRE;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (conductivity(mineral, middle, REFERENCE) < strength) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private double conductivity(double mineral, double salt, double celsius) {
    double within =
        Math.max(ConductivityModel.MIN_CELSIUS, Math.min(ConductivityModel.MAX_CELSIUS, celsius));
    double feed = Math.min(mostPerKilogram, HouseFeed.gramsPerKilogram(Math.max(0, salt)));
    double place = Math.max(0, mineral) / MINERAL_STEP;
    int below = (int) place;
    double above = place - below;
    double value = table(below).conductivity(feed, within);
    if (above > 0) {
      value += above * (table(below + 1).conductivity(feed, within) - value);
    }
    return value * (1 + BEYOND_PER_KELVIN * (celsius - within));
  }

  private FeedTable table(int tenths) {
    return tables.computeIfAbsent(tenths, this::tabled);
  }

  private FeedTable tabled(int tenths) {
    Composition water = water(tenths * MINERAL_STEP);
    return FeedTable.of(model, water, HouseFeed.PER_GRAM, mostPerKilogram)
        .value()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "minerals of %s tenths of mS/cm are beyond the model".formatted(tenths)));
  }

  /** Borehole water diluted or concentrated to a conductivity at 25 °C. */
  private Composition water(double strength) {
    if (strength <= 0) {
      return Composition.WATER;
    }
    double low = 0;
    double high = MOST_BOREHOLE;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (model.predict(HouseFeed.BOREHOLE.times(middle), REFERENCE) instanceof Predicted found
          && found.conductivity() < strength) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return HouseFeed.BOREHOLE.times(low);
  }
}
