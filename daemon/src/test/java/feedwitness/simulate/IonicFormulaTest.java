package feedwitness.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.solution.Composition;
import feedwitness.solution.ConductivityModel;
import feedwitness.solution.ConductivityOutcome.Predicted;
import feedwitness.solution.Iso7888;
import org.junit.jupiter.api.Test;

class IonicFormulaTest {
  private static final double MINERAL = 0.4626;

  private final ConductivityModel model = new ConductivityModel();
  private final IonicFormula formula = new IonicFormula();

  private Predicted predicted(Composition composition, double celsius) {
    return (Predicted) model.predict(composition, celsius);
  }

  /**
   * By hand: what the ions of a gram would conduct if none hindered another. Limiting
   * conductivities at 25 °C from the CRC Handbook; the label turned into mmol/g.
   */
  @Test
  void conductsSomewhatLessThanItsIonsWouldAlone() {
    double perGram =
        (5.854 * 71.4
                + 2.213 * 73.5
                + 1.000 * 33
                + 3.949 * 73.5
                + 2 * 0.471 * 53
                + 2 * 0.475 * 80
                + 0.70 * 50.1)
            * 1e-3;
    for (double grams : new double[] {0.2, 0.5, 0.85, 1.25, 2.0}) {
      double added = formula.at25(new Liquid(MINERAL, grams, 25)) - MINERAL;
      double share = added / (grams * perGram);
      assertTrue(share > 0.82 && share < 0.95, () -> share + " of the limit at " + grams + " g/L");
    }
    double stock = formula.at25(new Liquid(MINERAL, 100, 25)) - MINERAL;
    assertTrue(stock > 55 && stock < 75, () -> "stock of " + stock + " mS/cm");
  }

  @Test
  void isTheModelOfTheFeedDissolvedInTheWater() {
    Composition water = HouseFeed.BOREHOLE;
    double mineral = predicted(water, 25).conductivity();
    for (double grams : new double[] {0, 0.4, 1.25, 2, 20, 100}) {
      Composition feed = water.plus(HouseFeed.gramsPerKilogram(grams), HouseFeed.PER_GRAM);
      for (double celsius : new double[] {4, 14, 25, 38}) {
        double full = predicted(feed, celsius).conductivity();
        assertEquals(full, formula.raw(new Liquid(mineral, grams, celsius)), 2e-3 * full);
      }
      double at25 = predicted(feed, 25).conductivity();
      assertEquals(at25, formula.at25(new Liquid(mineral, grams, 7)), 2e-3 * at25);
    }
  }

  @Test
  void countsGramsByTheLitreAsTheDensityHasThem() {
    for (double grams : new double[] {1, 20, 60, 100, 120}) {
      double perKilogram = HouseFeed.gramsPerKilogram(grams);
      Predicted feed = predicted(HouseFeed.PER_GRAM.times(perKilogram), 20);
      assertEquals(grams, perKilogram * feed.waterPerLitre(), 0.01 * grams);
    }
  }

  @Test
  void followsIso7888ForSourceWater() {
    for (double celsius = 5; celsius <= 30; celsius++) {
      assertEquals(Iso7888.ratio(celsius), ratio(0, celsius), 0.02 * Iso7888.ratio(celsius));
    }
  }

  @Test
  void findsTheGramsForAStrength() {
    double grams = formula.saltFor(0.46, 1.50);
    assertEquals(1.50, formula.at25(new Liquid(0.46, grams, 25)), 1e-9);
    assertTrue(grams > 1.1 && grams < 1.3, () -> grams + " g/L for 1.50 mS/cm");
    assertEquals(0, formula.saltFor(0.46, 0.40), 1e-9);
  }

  @Test
  void keepsTheMineralsAsTheyAreStated() {
    for (double mineral : new double[] {0.02, 0.4626, 0.5, 1.234, 2.99}) {
      assertEquals(mineral, formula.at25(new Liquid(mineral, 0, 12)), 2e-3 * mineral + 1e-3);
    }
  }

  @Test
  void goesOnSteadilyWhereTheModelEnds() {
    double before = formula.raw(new Liquid(MINERAL, 1, 44.9));
    for (double celsius = 45; celsius < 55; celsius += 0.1) {
      double now = formula.raw(new Liquid(MINERAL, 1, celsius));
      assertTrue(now > before && now < 1.01 * before);
      before = now;
    }
    assertTrue(formula.raw(new Liquid(MINERAL, 1, -2)) > 0);
    assertTrue(formula.at25(new Liquid(MINERAL, 150, 20)) > 60, "more than 120 g/L counts as 120");
  }

  private double ratio(double grams, double celsius) {
    return formula.raw(new Liquid(MINERAL, grams, celsius))
        / formula.raw(new Liquid(MINERAL, grams, 25));
  }
}
