package feedwitness.simulate;

import feedwitness.feed.SourceWater;
import feedwitness.solution.Composition;

/** House Feed, as the feed sums make ions of its label, and the borehole water of Quarry End. */
final class HouseFeed {
  /** mol in a gram of the dry feed. */
  static final Composition PER_GRAM = feedwitness.feed.HouseFeed.product().perGram();

  /** mol in a kilogram of borehole water of about 0.46 mS/cm at 25 °C. */
  static final Composition BOREHOLE = SourceWater.CALCIUM_BICARBONATE_TYPE;

  /** kg of water in a litre of pure water, and what a gram of feed in it displaces; 20 °C. */
  private static final double WATER_PER_LITRE = 0.998;

  private static final double DISPLACED_PER_GRAM = 3.7e-4;

  private HouseFeed() {}

  /** Grams of feed for each kilogram of water in a solution of this many grams a litre. */
  static double gramsPerKilogram(double gramsPerLitre) {
    return gramsPerLitre / (WATER_PER_LITRE - DISPLACED_PER_GRAM * gramsPerLitre);
  }
}
