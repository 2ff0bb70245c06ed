package feedwitness.feed;

import static feedwitness.feed.Solubility.crc;

import feedwitness.solution.Composition;
import feedwitness.solution.Ion;
import feedwitness.solution.Trace;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The straight salts. Solubilities: CRC Handbook. Heats: CRC Handbook for potassium nitrate,
 * ammonium nitrate and chlorides; for the others differences of the NBS standard enthalpies of
 * formation (Wagman et al. 1982), good to about 10 %.
 */
final class Salts {
  private static final Solubility CALCIUM_NITRATE = crc(50.1, 53.1, 56.7, 60.9, 65.4);
  private static final Solubility MAGNESIUM_SULFATE = crc(18.2, 21.7, 25.1, 28.2, 30.9);
  private static final Solubility CALCIUM_CHLORIDE = crc(36.7, 39.19, 42.13, 49.12, 52.85);
  private static final Solubility MANGANESE_SULFATE = crc(34.6, 37.3, 38.6, 38.9, 37.7);

  static final List<Salt> ALL = List.of(all());

  private Salts() {}

  private static Salt[] all() {
    return new Salt[] {
      // sold as calcium nitrate; 5 Ca(NO3)2 · NH4NO3 · 10 H2O. Its water counts with the base.
      Salt.of(
          "calcium-nitrate",
          "Calcium nitrate (ammonium double salt, 15.5 % N)",
          "5Ca(NO3)2·NH4NO3",
          10,
          Map.of(Ion.CA, 5, Ion.NH4, 1, Ion.NO3, 11),
          0,
          CALCIUM_NITRATE,
          89),
      Salt.of(
          "calcium-nitrate-tetrahydrate",
          "Calcium nitrate without ammonium",
          "Ca(NO3)2",
          4,
          Map.of(Ion.CA, 1, Ion.NO3, 2),
          0,
          CALCIUM_NITRATE,
          33),
      Salt.of(
          "potassium-nitrate",
          "Potassium nitrate",
          "KNO3",
          0,
          Map.of(Ion.K, 1, Ion.NO3, 1),
          0,
          crc(12.0, 17.6, 24.2, 31.3, 38.6),
          34.9),
      Salt.of(
          "magnesium-nitrate",
          "Magnesium nitrate",
          "Mg(NO3)2",
          6,
          Map.of(Ion.MG, 1, Ion.NO3, 2),
          0,
          crc(38.4, 39.5, 40.8, 42.4, 44.1),
          18),
      Salt.of(
          "ammonium-nitrate",
          "Ammonium nitrate",
          "NH4NO3",
          0,
          Map.of(Ion.NH4, 1, Ion.NO3, 1),
          0,
          crc(54.0, 60.1, 65.5, 70.3, 74.3),
          25.7),
      Salt.of(
          "magnesium-sulfate",
          "Magnesium sulfate (bitter salt)",
          "MgSO4",
          7,
          Map.of(Ion.MG, 1, Ion.SO4, 1),
          0,
          MAGNESIUM_SULFATE,
          12),
      Salt.of(
          "magnesium-sulfate-monohydrate",
          "Magnesium sulfate, monohydrate (kieserite)",
          "MgSO4",
          1,
          Map.of(Ion.MG, 1, Ion.SO4, 1),
          0,
          MAGNESIUM_SULFATE,
          -59),
      Salt.of(
          "magnesium-sulfate-anhydrous",
          "Magnesium sulfate, anhydrous",
          "MgSO4",
          0,
          Map.of(Ion.MG, 1, Ion.SO4, 1),
          0,
          MAGNESIUM_SULFATE,
          -91),
      Salt.of(
          "potassium-sulfate",
          "Potassium sulfate",
          "K2SO4",
          0,
          Map.of(Ion.K, 2, Ion.SO4, 1),
          0,
          crc(7.11, 8.46, 9.95, 11.4, 12.9),
          23.8),
      Salt.of(
          "ammonium-sulfate",
          "Ammonium sulfate",
          "(NH4)2SO4",
          0,
          Map.of(Ion.NH4, 2, Ion.SO4, 1),
          0,
          crc(41.3, 42.1, 42.9, 43.8, 44.7),
          6.6),
      Salt.of(
          "monopotassium-phosphate",
          "Monopotassium phosphate",
          "KH2PO4",
          0,
          Map.of(Ion.K, 1, Ion.PO4, 1),
          2,
          crc(11.74, 14.91, 18.25, 21.77, 25.28),
          19.6),
      Salt.of(
          "dipotassium-phosphate",
          "Dipotassium phosphate",
          "K2HPO4",
          0,
          Map.of(Ion.K, 2, Ion.PO4, 1),
          1,
          crc(57.0, 59.1, 61.5, 64.1, 67.7),
          Double.NaN),
      Salt.of(
          "monoammonium-phosphate",
          "Monoammonium phosphate",
          "NH4H2PO4",
          0,
          Map.of(Ion.NH4, 1, Ion.PO4, 1),
          2,
          crc(17.8, 22.0, 26.4, 31.2, 36.2),
          16.3),
      Salt.of(
          "diammonium-phosphate",
          "Diammonium phosphate",
          "(NH4)2HPO4",
          0,
          Map.of(Ion.NH4, 2, Ion.PO4, 1),
          1,
          crc(36.4, 38.2, 40.0, 42.0, 44.1),
          Double.NaN),
      Salt.of(
          "potassium-chloride",
          "Potassium chloride",
          "KCl",
          0,
          Map.of(Ion.K, 1, Ion.CL, 1),
          0,
          crc(21.74, 23.61, 25.39, 27.04, 28.59),
          17.2),
      Salt.of(
          "calcium-chloride",
          "Calcium chloride, dihydrate",
          "CaCl2",
          2,
          Map.of(Ion.CA, 1, Ion.CL, 2),
          0,
          CALCIUM_CHLORIDE,
          -45),
      Salt.of(
          "magnesium-chloride",
          "Magnesium chloride",
          "MgCl2",
          6,
          Map.of(Ion.MG, 1, Ion.CL, 2),
          0,
          crc(33.96, 34.85, 35.58, 36.2, 36.77),
          Double.NaN),
      Salt.of(
          "potassium-bicarbonate",
          "Potassium bicarbonate",
          "KHCO3",
          0,
          Map.of(Ion.K, 1, Ion.CO3, 1),
          1,
          crc(18.62, 21.73, 24.92, 28.13, 31.32),
          18.8),
      Salt.urea(),
      ironChelate(),
      metalSulfate(
          "iron-sulfate",
          "Iron(II) sulfate",
          "FeSO4",
          7,
          Nutrient.FE,
          crc(13.5, 17.0, 20.8, 24.8, 28.8)),
      metalSulfate(
          "manganese-sulfate", "Manganese sulfate", "MnSO4", 1, Nutrient.MN, MANGANESE_SULFATE),
      metalSulfate(
          "copper-sulfate",
          "Copper sulfate",
          "CuSO4",
          5,
          Nutrient.CU,
          crc(12.4, 14.4, 16.7, 19.3, 22.2)),
      metalSulfate(
          "zinc-sulfate",
          "Zinc sulfate",
          "ZnSO4",
          7,
          Nutrient.ZN,
          crc(29.1, 32.0, 35.0, 38.2, 41.3)),
      Salt.trace(
          "boric-acid",
          "Boric acid",
          "H3BO3",
          0,
          Nutrient.B,
          Composition.WATER.with(Trace.BORIC_ACID, 1),
          3 * Atoms.H + Atoms.trace(Nutrient.B) + 3 * Atoms.O,
          Optional.of(crc(2.61, 3.57, 4.77, 6.27, 8.1))),
      Salt.trace(
          "sodium-molybdate",
          "Sodium molybdate",
          "Na2MoO4",
          2,
          Nutrient.MO,
          Salt.with(Trace.MOLYBDATE, Map.of(Ion.NA, 2)),
          2 * Atoms.NA + Atoms.trace(Nutrient.MO) + 4 * Atoms.O,
          Optional.of(crc(30.6, 38.8, 39.4, 39.8, 40.3)))
    };
  }

  private static Salt metalSulfate(
      String id, String title, String base, int hydrate, Nutrient metal, Solubility solubility) {
    return Salt.trace(
        id,
        title,
        base,
        hydrate,
        metal,
        Salt.with(Atoms.bare(metal), Map.of(Ion.SO4, 1)),
        Atoms.trace(metal) + Ion.SO4.molarMass(),
        Optional.of(solubility));
  }

  /** NaFeEDTA·3H2O, 421.1 g/mol: 13.3 % Fe. */
  private static Salt ironChelate() {
    double edta = 10 * 12.011 + 12 * Atoms.H + 2 * Atoms.N + 8 * Atoms.O;
    return Salt.trace(
        "iron-edta",
        "Iron EDTA, sodium salt",
        "NaFeEDTA",
        3,
        Nutrient.FE,
        Salt.with(Trace.CHELATE_1, Map.of(Ion.NA, 1)),
        Atoms.NA + Atoms.trace(Nutrient.FE) + edta,
        Optional.empty());
  }

  static Optional<Salt> byId(String id) {
    return ALL.stream().filter(salt -> salt.id().equals(id)).findFirst();
  }

  /** Salts with a base formula: its hydrates. */
  static List<Salt> byBase(String base) {
    return ALL.stream().filter(salt -> salt.base().equals(base)).toList();
  }
}
