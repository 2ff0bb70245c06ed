package feedwitness.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import feedwitness.solution.Iso7888;
import org.junit.jupiter.api.Test;

class SimpleFormulaTest {
  private static final double MINERAL = 0.4626;

  /** Ionic model of House Feed in bicarbonate water: g/L, mS/cm at 25 °C, κ(T)/κ(25) at 15, 35. */
  private static final double[][] MODEL = {
    {0.2, 0.6409, 0.8088, 1.1964},
    {0.5, 0.9019, 0.8121, 1.1928},
    {0.85, 1.2046, 0.8139, 1.1908},
    {1.25, 1.5478, 0.8150, 1.1897},
    {2.0, 2.1833, 0.8160, 1.1887},
  };

  private final SimpleFormula formula = new SimpleFormula();

  @Test
  void isTheFormulaWrittenAboveIt() {
    Liquid feed = new Liquid(0.46, 1.21, 15);
    double added = 1.21 * (0.897 - 0.0258 * Math.sqrt(1.21));
    assertEquals(0.46 + added, formula.at25(feed), 1e-12);
    assertEquals(0.46 * (1 - 0.204) + added * (1 - 0.183), formula.raw(feed), 1e-12);
  }

  @Test
  void agreesWithAnIonicModelOfHouseFeedWithinTheStatedError() {
    for (double[] row : MODEL) {
      double added = formula.at25(new Liquid(MINERAL, row[0], 25)) - MINERAL;
      assertEquals(row[1] - MINERAL, added, 0.01 * (row[1] - MINERAL));
      assertEquals(row[2], ratio(row[0], 15), 0.02 * row[2]);
      assertEquals(row[3], ratio(row[0], 35), 0.02 * row[3]);
    }
    double stock = formula.at25(new Liquid(MINERAL, 100, 25)) - MINERAL;
    assertEquals(64.22, stock, 0.06 * 64.22);
  }

  @Test
  void followsIso7888ForSourceWaterWithinTheStatedError() {
    for (double celsius = 10; celsius <= 30; celsius++) {
      assertEquals(Iso7888.ratio(celsius), ratio(0, celsius), 0.01 * Iso7888.ratio(celsius));
    }
    assertEquals(Iso7888.ratio(5), ratio(0, 5), 0.028 * Iso7888.ratio(5));
  }

  @Test
  void findsTheGramsForAStrength() {
    double grams = formula.saltFor(0.46, 1.50);
    assertEquals(1.50, formula.at25(new Liquid(0.46, grams, 25)), 1e-9);
    assertEquals(0, formula.saltFor(0.46, 0.40), 1e-9);
  }

  private double ratio(double grams, double celsius) {
    return formula.raw(new Liquid(MINERAL, grams, celsius))
        / formula.raw(new Liquid(MINERAL, grams, 25));
  }
}
