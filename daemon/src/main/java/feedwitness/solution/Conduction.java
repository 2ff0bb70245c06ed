package feedwitness.solution;

import java.util.List;

/**
 * What each ion conducts: its limiting conductivity less the electrophoretic term, times the
 * relaxation term (Debye, Hückel, Onsager, with the ions' own sizes), slowed by the viscosity of
 * the solution. Falkenhagen's form of the size correction, √I/(1 + B a √I).
 */
final class Conduction {
  /** No ion conducts less than this share of its limit: where the terms have left their range. */
  private static final double FLOOR = 0.02;

  private final List<Species> species;
  private final Parameters parameters;
  private final double viscosity25 = Water.at(25).viscosity();

  Conduction(Parameters parameters) {
    this.parameters = parameters;
    species = parameters.species();
  }

  /**
   * Equivalent conductivities, S cm²/eq, by species; 0 for neutral and absent ones, and for all
   * where no ions are.
   */
  double[] equivalents(Speciation dissolved, Bulk bulk, Water water) {
    double thinning = Math.pow(viscosity25 / water.viscosity(), parameters.walden());
    double[] lambda = new double[species.size()];
    Sides sides = new Sides();
    for (int i = 0; i < lambda.length; i++) {
      double m = dissolved.molality[i];
      int z = species.get(i).charge();
      if (m > 0 && z != 0) {
        lambda[i] = species.get(i).mobility().limitingAt(water.celsius(), thinning);
        sides.add(z, m, lambda[i]);
      }
    }
    if (sides.complete()) {
      slow(lambda, dissolved.ionicStrength, bulk, water, sides);
    }
    return lambda;
  }

  private void slow(double[] lambda, double strength, Bulk bulk, Water water, Sides sides) {
    double b = water.slopeB();
    double root = Math.sqrt(strength);
    double screening = b * 1e10; // 1/m per square root of ionic strength
    double kT = Constants.BOLTZMANN * water.kelvin();
    double q = sides.relaxationFactor();
    double relaxation =
        Constants.CHARGE
            * Constants.CHARGE
            * screening
            * sides.chargeProduct()
            * q
            / (1 + Math.sqrt(q))
            / (12 * Math.PI * Constants.PERMITTIVITY * water.permittivity() * kT);
    double electrophoresis =
        Constants.CHARGE
            * Constants.CHARGE
            * Constants.AVOGADRO
            * screening
            / (6 * Math.PI * water.viscosity() * 1e-3)
            * 1e4;
    double lnViscosity = Math.log(bulk.relativeViscosity());
    double thick = Math.max(0, lnViscosity - parameters.stockDampingFrom());
    double damping = -parameters.stockDamping() * thick * thick;
    double acid = strength * strength / (strength + 1.5);
    double crowd = Math.max(0, strength - parameters.crowdingFrom());
    for (int i = 0; i < lambda.length; i++) {
      if (lambda[i] > 0) {
        Mobility ion = species.get(i).mobility();
        int z = Math.abs(species.get(i).charge());
        double x = root / (1 + b * ion.size() * root);
        double slowing =
            Math.exp(
                damping
                    - ion.viscosityPower() * lnViscosity
                    - ion.acidLoss() * acid
                    - ion.crowding() * crowd);
        double slowed = (lambda[i] - electrophoresis * z * x) * (1 - relaxation * x) * slowing;
        lambda[i] = Math.max(slowed, FLOOR * lambda[i]);
      }
    }
  }

  /** mS/cm of one species. */
  double conductivity(int index, Speciation dissolved, Bulk bulk, double[] lambda) {
    return dissolved.molality[index]
        * bulk.waterPerLitre()
        * Math.abs(species.get(index).charge())
        * lambda[index];
  }

  /** Sums over the positive and the negative side of the solution. */
  private static final class Sides {
    private double cations;
    private double cationCharge;
    private double cationLambda;
    private double anions;
    private double anionCharge;
    private double anionLambda;

    void add(int charge, double molality, double lambda) {
      if (charge > 0) {
        cations += molality;
        cationCharge += molality * charge;
        cationLambda += molality * lambda;
      } else {
        anions += molality;
        anionCharge -= molality * charge;
        anionLambda += molality * lambda;
      }
    }

    boolean complete() {
      return cations > 0 && anions > 0;
    }

    double chargeProduct() {
      return cationCharge / cations * (anionCharge / anions);
    }

    /** q of Onsager, 1/2 for symmetrical salts. */
    double relaxationFactor() {
      double plus = cationCharge / cations;
      double minus = anionCharge / anions;
      double mean = cationLambda / cations;
      double share = mean / (mean + anionLambda / anions);
      return 1 / ((share / plus + (1 - share) / minus) * (plus + minus));
    }
  }
}
