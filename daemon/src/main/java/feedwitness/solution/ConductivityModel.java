package feedwitness.solution;

import feedwitness.solution.ConductivityOutcome.Predicted;
import feedwitness.solution.ConductivityOutcome.Refused;
import org.jspecify.annotations.Nullable;

/**
 * Conductivity of a mixture of fertilizer salts in water, from source water to stock.
 *
 * <p>Ions pair and give off protons; those that are left conduct after Debye, Hückel and Onsager
 * with a size of their own, slowed by the viscosity of the solution. 0 to 45 °C, ionic strength to
 * 3 mol/kg. How good it is, and its sources, stand in {@code daemon/docs/conductivity.md}.
 * Immutable; safe for any number of threads.
 */
public final class ConductivityModel {
  public static final double MIN_CELSIUS = 0;
  public static final double MAX_CELSIUS = 45;

  /** mol/kg of water, ion pairs taken into account. */
  public static final double MAX_IONIC_STRENGTH = 3;

  private final Parameters parameters;
  private final ReactionTable table;
  private final int[][] bulkLayout;
  private final SpeciationSolver solver;
  private final Conduction conduction;
  private final Limits limits = new Limits();
  private final ModelUncertainty uncertainty;

  /** Reads the parameters that come with the program. */
  public ConductivityModel() {
    parameters = Parameters.load();
    table = new ReactionTable(parameters.species());
    bulkLayout = Bulk.layout(parameters.species());
    solver = new SpeciationSolver(table, parameters.activityCap());
    conduction = new Conduction(parameters);
    uncertainty = new ModelUncertainty(table);
  }

  /**
   * Conductivity with the pH that the charge balance asks for.
   *
   * @param celsius 0 to 45 °C
   */
  public ConductivityOutcome predict(Composition composition, double celsius) {
    return predicted(composition, celsius, Double.NaN);
  }

  /**
   * Conductivity at a given pH; a small charge imbalance is borne and widens the uncertainty.
   *
   * @param celsius 0 to 45 °C
   * @param pH −1 to 14.5
   */
  public ConductivityOutcome predict(Composition composition, double celsius, double pH) {
    Refused refused = limits.pH(pH);
    return refused != null ? refused : predicted(composition, celsius, pH);
  }

  private ConductivityOutcome predicted(Composition composition, double celsius, double pH) {
    Refused refused = limits.input(composition, celsius);
    if (refused != null) {
      return refused;
    }
    Solution solution = solution(composition, celsius, pH);
    if (solution == null) {
      return limits.unsolved(celsius);
    }
    refused = limits.solution(composition, solution, Double.isNaN(pH), table);
    if (refused != null) {
      return refused;
    }
    return new Predicted(
        solution.conductivity,
        uncertainty.standard(composition, solution),
        solution.dissolved.ionicStrength,
        solution.dissolved.pH,
        solution.bulk.density(),
        solution.bulk.relativeViscosity(),
        solution.bulk.waterPerLitre());
  }

  /** Without any limit: for comparison with the reference beyond them. */
  @Nullable Solution solution(Composition composition, double celsius, double pH) {
    Water water = Water.at(celsius);
    double[] totals = SpeciationSolver.totals(composition);
    Speciation dissolved = solver.solve(totals, water, pH);
    if (dissolved == null) {
      return null;
    }
    Bulk bulk =
        Bulk.of(dissolved.molality, bulkLayout, parameters.bulk(), composition.neutrals(), water);
    double[] lambda = conduction.equivalents(dissolved, bulk, water);
    return new Solution(water, dissolved, bulk, lambda, conduction);
  }

  /** Standard uncertainty of a solution worked out without limits, mS/cm. */
  double uncertainty(Composition composition, Solution solution) {
    return uncertainty.standard(composition, solution);
  }

  /** What the species of a solution add up to, mol/kg by component. */
  double[] totals(Solution solution) {
    double[] totals = new double[Parameters.components()];
    for (int i = 0; i < table.size(); i++) {
      for (int k = 0; k < table.component[i].length; k++) {
        totals[table.component[i][k]] += table.number[i][k] * solution.dissolved.molality[i];
      }
    }
    return totals;
  }

  /** Index of a species by name, for tests and the uncertainty. */
  int indexOf(String species) {
    return table.indexOf(species);
  }
}
