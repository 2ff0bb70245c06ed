package feedwitness.solution;

import java.util.List;

/**
 * The species laid out for arithmetic. Index 0 of the components is H+, which counts by activity;
 * all others count by molality. Never changed after it is made.
 */
final class ReactionTable {
  private final List<Species> species;
  final int[] charge;
  final int[][] component;
  final int[][] number;

  /** What the Debye–Hückel term adds to log10 K, in units of −log10 γ of a single charge. */
  final int[] debye;

  /** 0.1 for neutral species that are salted out as usual, else 0. */
  final double[] salting;

  final double[] fade;

  ReactionTable(List<Species> species) {
    this.species = species;
    int n = species.size();
    charge = new int[n];
    component = new int[n][];
    number = new int[n][];
    debye = new int[n];
    salting = new double[n];
    fade = new double[n];
    for (int i = 0; i < n; i++) {
      lay(i, species.get(i));
    }
  }

  private void lay(int i, Species one) {
    int parts = one.formedFrom().size();
    charge[i] = one.charge();
    component[i] = new int[parts];
    number[i] = new int[parts];
    int squares = 0;
    for (int k = 0; k < parts; k++) {
      Species.Part part = one.formedFrom().get(k);
      component[i][k] = part.component();
      number[i][k] = part.number();
      if (part.component() != 0) {
        int z = species.get(part.component()).charge();
        squares += part.number() * z * z;
      }
    }
    debye[i] = squares - charge[i] * charge[i];
    fade[i] = one.fade();
    salting[i] = charge[i] == 0 && fade[i] == 0 ? Activity.SALTING : 0;
  }

  int size() {
    return charge.length;
  }

  /** Natural logarithms of the formation constants. */
  double[] lnK(Water water) {
    double kelvin = water.kelvin();
    double log10Kelvin = Math.log10(kelvin);
    double[] lnK = new double[size()];
    for (int i = 0; i < lnK.length; i++) {
      lnK[i] = Constants.LN10 * species.get(i).logK().log10At(kelvin, log10Kelvin);
    }
    return lnK;
  }

  int indexOf(String name) {
    for (int i = 0; i < species.size(); i++) {
      if (species.get(i).name().equals(name)) {
        return i;
      }
    }
    throw new IllegalArgumentException("no species " + name);
  }
}
