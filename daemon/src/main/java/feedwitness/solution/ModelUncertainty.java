package feedwitness.solution;

import java.util.Map;

/**
 * Standard uncertainty of a prediction, from how far the model was off where it could be compared.
 *
 * <p>Salts that were measured and fitted are known best. A nitrate or phosphate feed has no data of
 * its own; there the figures are those of leaving one salt out of the fit and predicting it: 1 % to
 * 0.1 mol/kg, 5 % in stock. All parts are relative standard uncertainties, taken as independent.
 */
final class ModelUncertainty {
  /** Ionic strength, mol/kg, at which the tables below stand. */
  private static final double[] STRENGTH = {0.001, 0.01, 0.1, 0.5, 1, 3};

  /** Chlorides, measured at 25 °C. */
  private static final double[] MEASURED = {0.005, 0.006, 0.008, 0.009, 0.012, 0.020};

  /** Further, for a salt left out of the fit (half its 95 % figure). */
  private static final double[] LEFT_OUT = {0.003, 0.004, 0.009, 0.025, 0.035, 0.055};

  /** Further, for sulfate, whose pairs are strong and fade. */
  private static final double[] SULFATE = {0.003, 0.004, 0.006, 0.012, 0.018, 0.025};

  /** Further, for sulfate facing calcium or magnesium. */
  private static final double[] DOUBLY_CHARGED = {0.002, 0.004, 0.008, 0.015, 0.025, 0.035};

  private static final double PER_KELVIN = 4e-4;
  private static final double PER_KELVIN_IN_STOCK = 3e-4;

  /** Limiting conductivities of the phosphates differ by 5 % between collections. */
  private static final double PHOSPHATE_LIMIT = 0.04;

  /** Estimated conductivities of ion pairs. */
  private static final double PAIR = 0.3;

  /** Per mol/kg: half of what a neutral solute is thought to do has never been measured. */
  private static final double NEUTRAL = 0.03;

  /** S cm²/eq: what an ion that is missing from the balance may conduct. */
  private static final double MISSING_ION = 60;

  /** mS/cm: carbon dioxide from the air, about a third of its full effect on pure water. */
  private static final double AIR = 4e-4;

  private static final String[] ESTIMATED = {
    "CaHCO3+", "MgHCO3+", "CaH2PO4+", "MgH2PO4+", "CaPO4-", "MgPO4-", "KHPO4-", "NaHPO4-", "CaNO3+"
  };

  private final int[] estimated;
  private final int[] phosphates;

  ModelUncertainty(ReactionTable table) {
    estimated = new int[ESTIMATED.length];
    for (int i = 0; i < estimated.length; i++) {
      estimated[i] = table.indexOf(ESTIMATED[i]);
    }
    phosphates = new int[] {table.indexOf("H2PO4-"), table.indexOf("HPO4-2")};
  }

  /** mS/cm. */
  double standard(Composition composition, Solution solution) {
    double relative =
        Math.sqrt(
            square(known(solution))
                + square(salts(composition, solution))
                + square(shares(solution))
                + square(NEUTRAL * neutrals(composition)));
    double absolute =
        Math.sqrt(
            square(AIR) + square(traces(composition, solution)) + square(imbalance(solution)));
    return Math.hypot(relative * solution.conductivity, absolute);
  }

  private static double known(Solution solution) {
    double strength = solution.dissolved.ionicStrength;
    double away = Math.abs(solution.water.celsius() - 25);
    return Math.hypot(at(MEASURED, strength), perKelvin(strength) * away);
  }

  /** Of κ(T)/κ(25), for each kelvin away from 25 °C. */
  static double perKelvin(double ionicStrength) {
    return PER_KELVIN + PER_KELVIN_IN_STOCK * Math.min(1, ionicStrength);
  }

  /** What the anions (and calcium, magnesium) have of data of their own, by share of the charge. */
  private static double salts(Composition composition, Solution solution) {
    double strength = solution.dissolved.ionicStrength;
    double[] totals = SpeciationSolver.totals(composition);
    double nitrate = totals[Ion.NO3.component()];
    double phosphate = 1.5 * totals[Ion.PO4.component()];
    double carbonate = 1.5 * totals[Ion.CO3.component()];
    double sulfate = 2 * totals[Ion.SO4.component()];
    double anions = nitrate + phosphate + carbonate + sulfate + totals[Ion.CL.component()];
    if (!(anions > 0)) {
      return 0;
    }
    double doubly = 2 * (totals[Ion.CA.component()] + totals[Ion.MG.component()]);
    double strange = (nitrate + phosphate + carbonate) / anions;
    double facing = Math.min(sulfate, doubly) / anions;
    return Math.sqrt(
        square(strange * at(LEFT_OUT, strength))
            + square(sulfate / anions * at(SULFATE, strength))
            + square(facing * at(DOUBLY_CHARGED, strength)));
  }

  private double shares(Solution solution) {
    double pairs = 0;
    for (int i : estimated) {
      pairs += solution.share[i];
    }
    double phosphate = 0;
    for (int i : phosphates) {
      phosphate += solution.share[i];
    }
    return solution.conductivity > 0
        ? Math.hypot(PAIR * pairs, PHOSPHATE_LIMIT * phosphate) / solution.conductivity
        : 0;
  }

  private static double neutrals(Composition composition) {
    double sum = 0;
    for (double amount : composition.neutrals().values()) {
      sum += amount;
    }
    return sum;
  }

  private double traces(Composition composition, Solution solution) {
    double sum = 0;
    for (Map.Entry<Trace, Double> trace : composition.traces().entrySet()) {
      Ion like = trace.getKey().like();
      if (like != null) {
        int index = like.component(); // components stand first among the species
        sum +=
            square(
                trace.getKey().doubt()
                    * trace.getValue()
                    * Math.abs(like.charge())
                    * solution.lambda[index]
                    * solution.bulk.waterPerLitre());
      }
    }
    return Math.sqrt(sum);
  }

  private static double imbalance(Solution solution) {
    return MISSING_ION * Math.abs(solution.dissolved.netCharge) * solution.bulk.waterPerLitre();
  }

  /** By the logarithm of the ionic strength; held at the ends. */
  private static double at(double[] values, double strength) {
    int last = STRENGTH.length - 1;
    if (strength <= STRENGTH[0]) {
      return values[0];
    }
    for (int i = 1; i <= last; i++) {
      if (strength <= STRENGTH[i]) {
        double share =
            Math.log(strength / STRENGTH[i - 1]) / Math.log(STRENGTH[i] / STRENGTH[i - 1]);
        return values[i - 1] + share * (values[i] - values[i - 1]);
      }
    }
    return values[last];
  }

  private static double square(double x) {
    return x * x;
  }
}
