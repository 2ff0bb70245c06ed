package feedwitness.feed;

import feedwitness.solution.Composition;
import feedwitness.solution.Ion;
import feedwitness.solution.NeutralSolute;
import feedwitness.solution.Trace;
import java.util.Map;

/** Masses in g/mol (IUPAC conventional atomic weights), and what nutrients a composition holds. */
final class Atoms {
  static final double H = 1.008;
  static final double N = 14.007;
  static final double O = 15.999;
  static final double NA = 22.990;
  static final double P = 30.974;
  static final double S = 32.06;
  static final double WATER = 2 * H + O;

  private static final Map<Nutrient, Double> TRACE_MASS =
      Map.of(
          Nutrient.FE, 55.845,
          Nutrient.MN, 54.938,
          Nutrient.ZN, 65.38,
          Nutrient.CU, 63.546,
          Nutrient.B, 10.81,
          Nutrient.MO, 95.95);

  private Atoms() {}

  static double trace(Nutrient nutrient) {
    Double mass = TRACE_MASS.get(nutrient);
    if (mass == null) {
      throw new IllegalArgumentException(nutrient.symbol() + " is no trace element");
    }
    return mass;
  }

  /** How a trace element counts in the ionic model when it is not chelated. */
  static Trace bare(Nutrient nutrient) {
    return switch (nutrient) {
      case FE -> Trace.IRON;
      case MN -> Trace.MANGANESE;
      case ZN -> Trace.ZINC;
      case CU -> Trace.COPPER;
      case MO -> Trace.MOLYBDATE;
      case B -> Trace.BORIC_ACID;
      default -> throw new IllegalArgumentException(nutrient.symbol() + " is no trace element");
    };
  }

  /**
   * Grams of the main nutrients in what a composition counts in mol; trace elements are left out,
   * since a chelate does not say which metal it holds.
   */
  static Nutrients of(Composition composition) {
    Nutrients sum = Nutrients.NONE;
    for (Map.Entry<Ion, Double> ion : composition.ions().entrySet()) {
      sum = add(sum, ion.getKey(), ion.getValue());
    }
    double urea = composition.neutrals().getOrDefault(NeutralSolute.UREA, 0.0);
    return urea == 0 ? sum : sum.with(Nutrient.UREA_N, urea * 2 * N);
  }

  private static Nutrients add(Nutrients sum, Ion ion, double mol) {
    return switch (ion) {
      case NO3 -> sum.with(Nutrient.NITRATE_N, mol * N);
      case NH4 -> sum.with(Nutrient.AMMONIUM_N, mol * N);
      case PO4 -> sum.with(Nutrient.P, mol * P);
      case SO4 -> sum.with(Nutrient.S, mol * S);
      case K -> sum.with(Nutrient.K, mol * ion.molarMass());
      case NA -> sum.with(Nutrient.NA, mol * ion.molarMass());
      case CA -> sum.with(Nutrient.CA, mol * ion.molarMass());
      case MG -> sum.with(Nutrient.MG, mol * ion.molarMass());
      case CL -> sum.with(Nutrient.CL, mol * ion.molarMass());
      case CO3 -> sum;
    };
  }

  /** Charge of an ion as it stands in a salt that gives no acid: phosphate and carbonate single. */
  static int charge(Ion ion) {
    return ion == Ion.PO4 || ion == Ion.CO3 ? -1 : ion.charge();
  }
}
