package feedwitness.simulate;

import feedwitness.solution.Composition;
import feedwitness.solution.Ion;
import feedwitness.solution.NeutralSolute;
import java.util.Map;

/**
 * House Feed 16.4-7.1-18.6 and the borehole water of Quarry End, as ions. Both are invented.
 *
 * <p>House Feed by its label: nitrate-N 8.2 %, ammonium-N 3.1 %, urea-N 5.1 %, P2O5 7.1 %, K2O 18.6
 * %, MgO 1.9 %, SO3 3.8 %; what else a label need not name is taken as sodium, as much as balances
 * the charges with the phosphate at one negative charge. The water is of the calcium bicarbonate
 * type.
 */
final class HouseFeed {
  /** mol in a gram of the dry feed. */
  static final Composition PER_GRAM = perGram();

  /** mol in a kilogram of borehole water of about 0.46 mS/cm at 25 °C. */
  static final Composition BOREHOLE =
      Composition.of(
          Map.ofEntries(
              Map.entry(Ion.CA, 0.00180),
              Map.entry(Ion.MG, 0.00035),
              Map.entry(Ion.NA, 0.0005),
              Map.entry(Ion.K, 0.00004),
              Map.entry(Ion.CL, 0.0005),
              Map.entry(Ion.SO4, 0.00020),
              Map.entry(Ion.NO3, 0.00004),
              Map.entry(Ion.CO3, 0.0041)));

  /** kg of water in a litre of pure water, and what a gram of feed in it displaces; 20 °C. */
  private static final double WATER_PER_LITRE = 0.998;

  private static final double DISPLACED_PER_GRAM = 3.7e-4;

  private HouseFeed() {}

  private static Composition perGram() {
    double nitrate = 0.082 / 14.007;
    double ammonium = 0.031 / 14.007;
    double urea = 0.051 / 14.007 / 2;
    double phosphate = 0.071 / 141.94 * 2;
    double potassium = 0.186 / 94.196 * 2;
    double magnesium = 0.019 / 40.304;
    double sulfate = 0.038 / 80.06;
    double sodium = nitrate + phosphate + 2 * sulfate - ammonium - potassium - 2 * magnesium;
    return Composition.of(
            Map.ofEntries(
                Map.entry(Ion.NO3, nitrate),
                Map.entry(Ion.NH4, ammonium),
                Map.entry(Ion.PO4, phosphate),
                Map.entry(Ion.K, potassium),
                Map.entry(Ion.MG, magnesium),
                Map.entry(Ion.SO4, sulfate),
                Map.entry(Ion.NA, sodium)))
        .with(NeutralSolute.UREA, urea);
  }

  /** Grams of feed for each kilogram of water in a solution of this many grams a litre. */
  static double gramsPerKilogram(double gramsPerLitre) {
    return gramsPerLitre / (WATER_PER_LITRE - DISPLACED_PER_GRAM * gramsPerLitre);
  }
}
