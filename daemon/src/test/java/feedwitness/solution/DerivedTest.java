package feedwitness.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.solution.ConductivityOutcome.Predicted;
import feedwitness.solution.ConductivityOutcome.Refused;
import feedwitness.solution.StrengthCurve.Share;
import feedwitness.solution.StrengthCurve.Strength;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What follows from the model: courses with temperature, strengths and shares, live tables. */
class DerivedTest {
  private final ConductivityModel model = new ConductivityModel();

  private double at(Composition composition, double celsius) {
    return assertInstanceOf(Predicted.class, model.predict(composition, celsius)).conductivity();
  }

  private TemperatureCourse course(Composition composition) {
    return known(TemperatureCourse.of(model, composition));
  }

  private static <T> T known(Answer<T> answer) {
    return answer.value().orElseThrow();
  }

  private static <T> Refused why(Answer<T> answer) {
    return answer.refusal().orElseThrow();
  }

  @Test
  void foretellsTheBoreholeOfQuarryEnd() {
    assertEquals(0.46, at(QuarryEnd.BOREHOLE, 25), 0.01);
  }

  @Test
  void followsTheModelWithTemperatureForFeedWaterAndStock() {
    for (Composition one :
        new Composition[] {QuarryEnd.BOREHOLE, QuarryEnd.FEED, QuarryEnd.STOCK}) {
      TemperatureCourse course = course(one);
      double at25 = at(one, 25);
      assertEquals(1, course.ratio(25), 0);
      for (double celsius = 0; celsius <= 45; celsius += 0.9) {
        double ratio = at(one, celsius) / at25;
        assertEquals(ratio, course.ratio(celsius), 5e-4 * ratio);
        assertEquals(1 / course.ratio(celsius), course.factor(celsius), 1e-15);
      }
      assertTrue(course.relativeResidual() < 5e-4, () -> "residual " + course.relativeResidual());
    }
  }

  /** NIST: CRC Handbook, "Standard KCl solutions for calibrating conductivity cells". */
  @Test
  void goesWithTemperatureAsPotassiumChlorideWasMeasured() {
    TemperatureCourse course = course(Composition.of(Map.of(Ion.K, 0.01, Ion.CL, 0.01)));
    for (double celsius : new double[] {0, 5, 10, 15, 20, 30, 35, 40, 45}) {
      double measured = KclStandard.ratio(celsius);
      double allowed = 2 * course.relativeStandardUncertainty(celsius) * measured;
      assertEquals(measured, course.ratio(celsius), allowed);
    }
    assertEquals(0.01894, course.alpha(15), 0.0004);
  }

  /** ISO 7888 was measured on calcium bicarbonate waters; feeds go differently. */
  @Test
  void compensatesHardWaterAsIso7888AndFeedOtherwise() {
    TemperatureCourse water = course(QuarryEnd.BOREHOLE);
    TemperatureCourse feed = course(QuarryEnd.FEED);
    for (double celsius : new double[] {5, 10, 15, 20, 30, 35}) {
      assertEquals(1, water.factor(celsius) * Iso7888.ratio(celsius), 0.02);
    }
    assertTrue(feed.factor(5) < 0.965 / Iso7888.ratio(5), "ISO 7888 over-corrects feed at 5 °C");
    assertEquals(0.0184, feed.alpha(25), 0.0007);
  }

  @Test
  void slopesAreTheDerivatives() {
    TemperatureCourse course = course(QuarryEnd.FEED);
    double h = 1e-4;
    for (double celsius : new double[] {2, 17, 25, 40}) {
      double slope = (course.ratio(celsius + h) - course.ratio(celsius - h)) / (2 * h);
      assertEquals(slope, course.ratioPerKelvin(celsius), 1e-8);
    }
  }

  @Test
  void findsTheShareForAStrengthAndTheStrengthOfAShare() {
    StrengthCurve curve = known(StrengthCurve.of(model, QuarryEnd.BOREHOLE, QuarryEnd.STOCK, 0.2));
    for (double strength : new double[] {0.80, 1.50, 1.95}) {
      Share share = known(curve.share(strength));
      Strength back = known(curve.strength(share.value()));
      assertEquals(strength, back.value(), 1e-6);
      assertEquals(strength - at(QuarryEnd.BOREHOLE, 25), back.added(), 1e-6);
      // a share is as uncertain as the strength it is made of
      double slope = back.standardUncertainty() / share.standardUncertainty();
      double more = at(QuarryEnd.BOREHOLE.plus(share.value() + 1e-4, QuarryEnd.STOCK), 25);
      assertEquals((more - strength) / 1e-4, slope, 0.01 * slope);
    }
  }

  @Test
  void refusesStrengthsTheWaterOrTheStockCannotGive() {
    StrengthCurve curve = known(StrengthCurve.of(model, QuarryEnd.BOREHOLE, QuarryEnd.STOCK, 0.02));
    Refused weak = why(curve.share(0.3));
    assertTrue(weak.message().contains("strength: 0.3 mS/cm"), weak.message());
    assertTrue(weak.message().contains("the water alone is stronger"), weak.message());
    why(curve.share(20));
    why(curve.share(Double.NaN));
    why(curve.strength(0.03));
    why(StrengthCurve.of(model, QuarryEnd.BOREHOLE, QuarryEnd.STOCK, 100));
  }

  @Test
  void countsTheLitresOfAnInjector() {
    // one litre of water as stock in water: 1 in 80
    assertEquals(1.0 / 80, StrengthCurve.shareOfStock(0.998, 0.998, 80), 1e-12);
    Predicted stock = assertInstanceOf(Predicted.class, model.predict(QuarryEnd.STOCK, 20));
    double share = StrengthCurve.shareOfStock(stock.waterPerLitre(), 0.998, 80);
    assertTrue(share < 1.0 / 80 && share > 0.95 / 80, () -> "share " + share);
  }

  @Test
  void tablesTheModelForTheLivePathWithinFivePartsInTenThousand() {
    near(QuarryEnd.BOREHOLE, QuarryEnd.FEED, 3);
    near(QuarryEnd.BOREHOLE, QuarryEnd.STOCK, 0.1);
    near(Composition.WATER, QuarryEnd.STOCK, 1);
    near(Composition.WATER, Composition.of(Map.of(Ion.MG, 0.5, Ion.SO4, 0.5)), 1);
  }

  private void near(Composition water, Composition concentrate, double maxShare) {
    FeedTable table = known(FeedTable.of(model, water, concentrate, maxShare));
    Random random = new Random(3);
    for (int i = 0; i < 2000; i++) {
      double share = maxShare * random.nextDouble();
      double celsius = 45 * random.nextDouble();
      double full = at(water.plus(share, concentrate), celsius);
      assertEquals(full, table.conductivity(share, celsius), 5e-4 * full);
      assertEquals(
          share, table.share(table.conductivity(share, celsius), celsius), 1e-6 * maxShare);
      double at25 = at(water.plus(share, concentrate), 25);
      assertEquals(at25, table.at25(full, celsius), 1e-3 * at25);
    }
  }

  @Test
  void knowsNothingBeyondTheTable() {
    FeedTable table = known(FeedTable.of(model, QuarryEnd.BOREHOLE, QuarryEnd.FEED, 2));
    assertTrue(Double.isNaN(table.conductivity(2.1, 20)));
    assertTrue(Double.isNaN(table.conductivity(1, 45.1)));
    assertTrue(Double.isNaN(table.conductivity(Double.NaN, 20)));
    assertTrue(Double.isNaN(table.at25(0.1, 20)), "weaker than the water alone");
    assertTrue(Double.isNaN(table.at25(9, 20)));
    assertTrue(Double.isNaN(table.at25(Double.NaN, 20)));
    why(FeedTable.of(model, QuarryEnd.BOREHOLE, Composition.WATER, 1));
  }
}
