package feedwitness.feed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.solution.Ion;
import feedwitness.solution.Trace;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Straight salts against percentages worked out by hand from atomic weights. */
class SaltsTest {

  private static double percent(String salt, Nutrient nutrient) {
    return 100 * SaltFormula.find(salt).product().nutrients().of(nutrient);
  }

  @Test
  void calciumNitrateMeansTheAmmoniumDoubleSalt() {
    Product product = new Products().find("calcium nitrate");
    assertEquals(15.55, 100 * product.nutrients().nitrogen(), 0.02);
    assertEquals(1.296, 100 * product.nutrients().of(Nutrient.AMMONIUM_N), 0.005);
    assertEquals(18.54, 100 * product.nutrients().of(Nutrient.CA), 0.02);
    assertEquals(16.97, percent("Ca(NO3)2·4H2O", Nutrient.CA), 0.02);
    assertEquals(11.86, percent("Ca(NO3)2·4H2O", Nutrient.NITRATE_N), 0.02);
  }

  @Test
  void holdsWhatItsFormulaHolds() {
    assertEquals(13.85, percent("KNO3", Nutrient.NITRATE_N), 0.02);
    assertEquals(38.67, percent("KNO3", Nutrient.K), 0.02);
    assertEquals(9.861, percent("MgSO4·7H2O", Nutrient.MG), 0.01);
    assertEquals(13.01, percent("MgSO4·7H2O", Nutrient.S), 0.02);
    assertEquals(17.56, percent("MgSO4·H2O", Nutrient.MG), 0.02);
    assertEquals(22.76, percent("KH2PO4", Nutrient.P), 0.02);
    assertEquals(28.73, percent("KH2PO4", Nutrient.K), 0.02);
    assertEquals(26.93, percent("NH4H2PO4", Nutrient.P), 0.02);
    assertEquals(12.18, percent("NH4H2PO4", Nutrient.AMMONIUM_N), 0.02);
    assertEquals(21.20, percent("(NH4)2SO4", Nutrient.AMMONIUM_N), 0.02);
    assertEquals(44.87, percent("K2SO4", Nutrient.K), 0.02);
    assertEquals(46.65, percent("urea", Nutrient.UREA_N), 0.02);
    assertEquals(10.93, percent("Mg(NO3)2·6H2O", Nutrient.NITRATE_N), 0.02);
    assertEquals(27.26, percent("CaCl2·2H2O", Nutrient.CA), 0.02);
  }

  @Test
  void holdsTheTraceElementOfItsFormula() {
    assertEquals(13.26, percent("iron-edta", Nutrient.FE), 0.02);
    assertEquals(32.5, percent("MnSO4·H2O", Nutrient.MN), 0.05);
    assertEquals(22.74, percent("ZnSO4·7H2O", Nutrient.ZN), 0.03);
    assertEquals(25.45, percent("CuSO4·5H2O", Nutrient.CU), 0.03);
    assertEquals(17.48, percent("H3BO3", Nutrient.B), 0.02);
    assertEquals(39.66, percent("Na2MoO4·2H2O", Nutrient.MO), 0.03);
  }

  @Test
  void everySaltIsElectricallyNeutral() {
    for (Salt salt : Salts.ALL) {
      double charge = salt.hydrogens();
      for (Map.Entry<Ion, Double> ion : salt.ions().ions().entrySet()) {
        charge += ion.getKey().charge() * ion.getValue();
      }
      for (Map.Entry<Trace, Double> trace : salt.ions().traces().entrySet()) {
        charge +=
            switch (trace.getKey()) {
              case IRON, MANGANESE, ZINC, COPPER -> 2;
              case CHELATE_1 -> -1;
              case CHELATE_2, MOLYBDATE -> -2;
              case BORIC_ACID -> 0;
            };
      }
      assertEquals(0, charge, 1e-12, salt.id());
    }
  }

  @Test
  void readsAFormulaHoweverItsHydrateIsWritten() {
    for (String text :
        new String[] {
          "MgSO4·7H2O", "MgSO4.7H2O", "MgSO4 * 7 H2O", "MgSO₄·7H₂O", "magnesium-sulfate"
        }) {
      assertEquals("magnesium-sulfate", SaltFormula.find(text).id(), text);
    }
  }

  @Test
  void namesTheHydratesItKnows() {
    IllegalArgumentException unknown =
        assertThrows(IllegalArgumentException.class, () -> SaltFormula.find("MgSO4·5H2O"));
    assertTrue(String.valueOf(unknown.getMessage()).contains("MgSO4·7H2O, MgSO4·H2O, MgSO4"));
    IllegalArgumentException usual =
        assertThrows(IllegalArgumentException.class, () -> SaltFormula.find("Ca(NO3)2"));
    assertTrue(String.valueOf(usual.getMessage()).contains("calcium-nitrate"));
  }

  /** CRC Handbook, potassium nitrate: 12.0, 17.6, 24.2, 31.3 % by mass at 0, 10, 20, 30 °C. */
  @Test
  void dissolvesAsTheHandbookSays() {
    Solubility nitre = Salts.byId("potassium-nitrate").orElseThrow().solubility().orElseThrow();
    assertEquals(136.4, nitre.perKilogramOfWater(0), 0.1);
    assertEquals(319.3, nitre.perKilogramOfWater(20), 0.1);
    assertEquals((319.3 + 455.6) / 2, nitre.perKilogramOfWater(25), 0.2);
    assertEquals(136.4, nitre.perKilogramOfWater(-5), 0.1);
  }
}
