package feedwitness.solution;

import org.jspecify.annotations.Nullable;

/**
 * Finds the speciation whose activity coefficients belong to its own ionic strength. The mass
 * balances are solved anew for each ionic strength tried; the root of "calculated less assumed" is
 * found by the secant, kept inside a bracket.
 */
final class SpeciationSolver {
  private static final int MAX_TRIALS = 100;
  private static final double RELATIVE = 1e-10;

  private final ReactionTable table;
  private final double activityCap;

  SpeciationSolver(ReactionTable table, double activityCap) {
    this.table = table;
    this.activityCap = activityCap;
  }

  /**
   * Totals by component, with the proton excess that balances the charge.
   *
   * @return mol/kg, index 0 the proton excess
   */
  static double[] totals(Composition composition) {
    double[] totals = new double[Parameters.components()];
    for (Ion ion : Ion.values()) {
      totals[ion.component()] = composition.of(ion);
    }
    composition
        .traces()
        .forEach(
            (trace, amount) -> {
              Ion like = trace.like();
              if (like != null) {
                totals[like.component()] += amount;
              }
            });
    for (Ion ion : Ion.values()) {
      totals[0] -= ion.charge() * totals[ion.component()];
    }
    return totals;
  }

  /**
   * @param pH given, or NaN to close the charge balance with it
   * @return null if no solution was found, which tests of 100 000 mixtures have not met
   */
  @Nullable Speciation solve(double[] totals, Water water, double pH) {
    MassBalance balance = new MassBalance(table, totals, table.lnK(water), -pH * Constants.LN10);
    double slopeA = water.slopeA();
    double low = 0;
    double high = Double.POSITIVE_INFINITY;
    double strength = formal(totals);
    balance.approach(new Activity(slopeA, strength, activityCap));
    double lastStrength = Double.NaN;
    double lastGap = Double.NaN;
    for (int trial = 0; trial < MAX_TRIALS; trial++) {
      if (!balance.solve(new Activity(slopeA, strength, activityCap))) {
        return null;
      }
      double found = balance.ionicStrength();
      double gap = found - strength;
      if (Math.abs(gap) <= RELATIVE * found) {
        return new Speciation(
            balance.molalities(),
            found,
            -balance.lnHydrogen() / Constants.LN10,
            balance.netCharge());
      }
      if (gap > 0) {
        low = strength;
      } else {
        high = strength;
      }
      double next = found;
      if (trial > 0 && gap != lastGap) {
        next = strength - gap * (strength - lastStrength) / (gap - lastGap);
      }
      lastStrength = strength;
      lastGap = gap;
      strength = inside(next, low, high, found);
    }
    return null;
  }

  private static double inside(double next, double low, double high, double found) {
    if (next > low && next < high) {
      return next;
    }
    if (found > low && found < high) {
      return found;
    }
    return high < Double.POSITIVE_INFINITY ? (low + high) / 2 : 2 * low + 1e-7;
  }

  private static double formal(double[] totals) {
    double sum = 0;
    for (Ion ion : Ion.values()) {
      sum += ion.charge() * ion.charge() * totals[ion.component()] / 2;
    }
    return Math.max(sum, 1e-7);
  }
}
