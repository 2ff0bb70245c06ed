package feedwitness.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.solution.ConductivityOutcome.Predicted;
import feedwitness.solution.ConductivityOutcome.Refused;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What the model will not answer, and how it says so. */
class RefusalTest {
  private static final Composition NITRATE = Composition.of(Map.of(Ion.K, 0.01, Ion.NO3, 0.01));
  private final ConductivityModel model = new ConductivityModel();

  private Refused refused(Composition composition, double celsius) {
    return assertInstanceOf(Refused.class, model.predict(composition, celsius));
  }

  private Predicted predicted(Composition composition) {
    return assertInstanceOf(Predicted.class, model.predict(composition, 25));
  }

  @Test
  void refusesANegativeAmount() {
    Refused refused = refused(NITRATE.with(Ion.CA, -0.002), 25);
    assertEquals("Ca", refused.field());
    assertEquals(-0.002, refused.value());
    assertEquals(0, refused.limit());
    assertEquals(
        "Ca: -0.002 mol/kg is beyond the limit 0 mol/kg; an amount cannot be negative",
        refused.message());
  }

  @Test
  void refusesAnAbsurdAmount() {
    Refused refused = refused(NITRATE.with(Ion.K, 140), 25);
    assertEquals("K", refused.field());
    assertTrue(refused.message().startsWith("K: 140 mol/kg is beyond the limit 10 mol/kg"));
    assertEquals("urea", refused(NITRATE.with(NeutralSolute.UREA, 6), 25).field());
    assertEquals("Zn2+", refused(NITRATE.with(Trace.ZINC, 0.5), 25).field());
    assertEquals("K", refused(NITRATE.with(Ion.K, Double.NaN), 25).field());
    assertEquals("NO3", refused(NITRATE.with(Ion.NO3, Double.POSITIVE_INFINITY), 25).field());
  }

  @Test
  void refusesTemperaturesOutside0To45() {
    assertEquals(0, refused(NITRATE, -0.1).limit());
    assertEquals(45, refused(NITRATE, 45.01).limit());
    assertEquals("temperature", refused(NITRATE, Double.NaN).field());
    assertInstanceOf(Predicted.class, model.predict(NITRATE, 0));
    assertInstanceOf(Predicted.class, model.predict(NITRATE, 45));
  }

  @Test
  void refusesStockBeyondItsData() {
    Refused refused = refused(Composition.of(Map.of(Ion.K, 3.2, Ion.CL, 3.2)), 25);
    assertEquals("ionic strength", refused.field());
    assertEquals(3, refused.limit());
    assertEquals(3.2, refused.value(), 1e-3);
  }

  @Test
  void refusesAChargeThatOnlyStrongAcidOrBaseWouldBalance() {
    Refused anions = refused(NITRATE.with(Ion.NO3, 0.02), 25);
    assertEquals("charge balance", anions.field());
    assertTrue(anions.message().contains("too many anions"), anions.message());
    Refused cations = refused(NITRATE.with(Ion.CA, 0.01), 25);
    assertTrue(cations.message().contains("too many cations"), cations.message());
    assertTrue(cations.message().contains("0.02 mol/kg"), cations.message());
    Refused lime = refused(Composition.of(Map.of(Ion.CA, 0.01)), 25);
    assertEquals("charge balance", lime.field());
  }

  @Test
  void refusesAPhThatTheIonsContradict() {
    Composition lacking = NITRATE.with(Ion.NO3, 0.005);
    Refused refused = assertInstanceOf(Refused.class, model.predict(lacking, 25, 6));
    assertEquals("charge balance", refused.field());
    assertEquals(0.005, refused.value(), 1e-5);
    assertEquals("pH", assertInstanceOf(Refused.class, model.predict(NITRATE, 25, 15)).field());
    Refused none = assertInstanceOf(Refused.class, model.predict(NITRATE, 25, Double.NaN));
    assertEquals("pH", none.field());
  }

  @Test
  void takesAcidsAndAlkalisForWhatTheyAre() {
    // Hamer and DeWane: 412.0 S cm²/eq at 0.01 mol/L HCl; Vanysek: 238.0 for NaOH; 25 °C
    assertEquals(4.120, predicted(Composition.of(Map.of(Ion.CL, 0.010029))).conductivity(), 0.03);
    assertEquals(2.380, predicted(Composition.of(Map.of(Ion.NA, 0.010029))).conductivity(), 0.03);
    Predicted acid = predicted(Composition.of(Map.of(Ion.PO4, 0.01)));
    assertTrue(acid.pH() > 2 && acid.pH() < 2.5, () -> "phosphoric acid of pH " + acid.pH());
  }

  @Test
  void closesTheBalanceOfBuffersByPh() {
    Predicted phosphate = predicted(Composition.of(Map.of(Ion.K, 0.02, Ion.PO4, 0.02)));
    assertEquals(4.6, phosphate.pH(), 0.2);
    Predicted water = predicted(QuarryEnd.BOREHOLE);
    assertTrue(water.pH() > 7 && water.pH() < 8, () -> "hard water of pH " + water.pH());
  }

  @Test
  void countsTracesAsTheIonsTheyAreLike() {
    Composition feed = QuarryEnd.FEED;
    Composition withZinc = feed.with(Trace.ZINC, 1e-4).with(Ion.NO3, feed.of(Ion.NO3) + 2e-4);
    Composition withMagnesium =
        feed.with(Ion.MG, feed.of(Ion.MG) + 1e-4).with(Ion.NO3, feed.of(Ion.NO3) + 2e-4);
    assertEquals(predicted(withMagnesium).conductivity(), predicted(withZinc).conductivity(), 1e-9);
    assertTrue(
        predicted(withZinc).standardUncertainty() > predicted(withMagnesium).standardUncertainty());
    Composition withBoron = feed.with(Trace.BORIC_ACID, 0.001);
    assertEquals(predicted(feed).conductivity(), predicted(withBoron).conductivity(), 1e-12);
  }

  @Test
  void slowsTheIonsByUreaAndIsLessSure() {
    Composition stock = QuarryEnd.STOCK.with(NeutralSolute.UREA, 0);
    Composition thick = stock.with(NeutralSolute.UREA, 1);
    double loss = 1 - predicted(thick).conductivity() / predicted(stock).conductivity();
    assertTrue(loss > 0.03 && loss < 0.10, () -> "urea of 1 mol/kg costs " + loss);
    assertTrue(
        predicted(thick).standardUncertainty() / predicted(thick).conductivity()
            > predicted(stock).standardUncertainty() / predicted(stock).conductivity());
  }
}
