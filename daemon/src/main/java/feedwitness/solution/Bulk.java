package feedwitness.solution;

import java.util.List;
import java.util.Map;

/**
 * Volume and viscosity of a solution as sums over its solutes, pairs taken apart.
 *
 * @param density g/cm³
 * @param relativeViscosity η/η_water, unitless
 * @param waterPerLitre kg of water in a litre of solution
 */
record Bulk(double density, double relativeViscosity, double waterPerLitre) {
  private static final double STRENGTH_LIMIT = 10;

  /** Which bulk solutes each species counts as. */
  static int[][] layout(List<Species> species) {
    int[][] layout = new int[species.size()][];
    for (int i = 0; i < layout.length; i++) {
      layout[i] = species.get(i).bulk().stream().mapToInt(Integer::intValue).toArray();
    }
    return layout;
  }

  static Bulk of(
      double[] molality,
      int[][] layout,
      List<BulkSolute> solutes,
      Map<NeutralSolute, Double> neutrals,
      Water water) {
    double[] amount = new double[solutes.size()];
    for (int i = 0; i < molality.length; i++) {
      for (int k : layout[i]) {
        amount[k] += molality[i];
      }
    }
    double strength = 0;
    for (int k = 0; k < amount.length; k++) {
      int z = solutes.get(k).charge();
      strength += amount[k] * z * z / 2;
    }
    Sums sums = new Sums(water, strength);
    for (int k = 0; k < amount.length; k++) {
      if (amount[k] > 0) {
        sums.add(solutes.get(k), amount[k]);
      }
    }
    neutrals.forEach(sums::add);
    return sums.bulk();
  }

  private static final class Sums {
    private final double root;
    private final double strength;
    private final double warmth;
    private double volume;
    private double mass = 1000;
    private double lnViscosity;

    Sums(Water water, double strength) {
      root = Math.sqrt(strength);
      this.strength = Math.min(strength, STRENGTH_LIMIT);
      double above20 = water.celsius() - 20;
      warmth = above20 / (1 + 0.012 * above20);
      volume = 1000 / water.density();
    }

    void add(BulkSolute solute, double amount) {
      if (solute.charge() == 0) {
        volume += amount * (solute.volume() + 0.1 * amount * solute.volumeSlope());
        lnViscosity +=
            amount
                * (solute.viscosityB()
                    + solute.viscosityD() * amount
                    + solute.viscositySlope() * warmth);
      } else {
        volume += amount * (solute.volume() + solute.volumeSlope() * root);
        lnViscosity +=
            amount
                * (solute.viscosityB()
                    + solute.viscosityD() * strength
                    + solute.viscositySlope() * warmth);
      }
      mass += amount * solute.molarMass();
    }

    void add(NeutralSolute solute, double amount) {
      volume += amount * (solute.volume() + 0.1 * amount * solute.volumeSlope());
      lnViscosity +=
          amount
              * (solute.viscosityB()
                  + solute.viscosityD() * amount
                  + solute.viscositySlope() * warmth);
      mass += amount * solute.molarMass();
    }

    Bulk bulk() {
      return new Bulk(mass / volume, Math.exp(lnViscosity), 1000 / volume);
    }
  }
}
