package feedwitness.solution;

import java.util.Arrays;

/**
 * Mass balances of one composition at one temperature and a given ionic strength.
 *
 * <p>With the activity coefficients held, the balances are the gradient of a convex function of the
 * logarithms of the free components: Σ m − Σ T·x. So there is one solution, and Newton's method
 * with a bounded step that must lower the function always gets there. The charge balance is the
 * balance of protons, T(H) = −Σ z T; where the pH is given it is left out.
 *
 * <p>A workspace: confined to the call that made it.
 */
final class MassBalance {
  /** Totals below this, mol/kg, are absent: no conductivity hangs on them. */
  static final double ABSENT = 1e-14;

  private static final int MAX_STEPS = 200;
  private static final double CLOSE_ENOUGH = 1e-7;
  private static final double LONGEST_STEP = 4;
  private static final double SURE_STEP = 0.5;

  private final ReactionTable table;
  private final double[] totals;
  private final double[] lnK;
  private final int[] active;
  private final int[] unknown;
  private final int[] place;
  private final double[] constant;
  private final double[] molality;
  private final double[] x;
  private final double[][] hessian;
  private final double[] step;

  /**
   * @param totals mol/kg by component; of H+ the excess of protons over bare ions
   * @param lnHydrogen ln of a given activity of H+, or NaN to close the charge balance
   */
  MassBalance(ReactionTable table, double[] totals, double[] lnK, double lnHydrogen) {
    this.table = table;
    this.totals = totals;
    this.lnK = lnK;
    place = new int[totals.length];
    Arrays.fill(place, -1);
    int count = 0;
    int[] found = new int[totals.length];
    for (int c = 0; c < totals.length; c++) {
      if (c == 0 ? Double.isNaN(lnHydrogen) : totals[c] > ABSENT) {
        place[c] = count;
        found[count++] = c;
      }
    }
    unknown = Arrays.copyOf(found, count);
    active = activeSpecies();
    constant = new double[table.size()];
    molality = new double[table.size()];
    x = new double[totals.length];
    hessian = new double[count][count];
    step = new double[count];
    start(lnHydrogen);
  }

  private int[] activeSpecies() {
    int[] found = new int[table.size()];
    int count = 0;
    for (int i = 0; i < found.length; i++) {
      boolean present = true;
      for (int c : table.component[i]) {
        present &= c == 0 || place[c] >= 0;
      }
      if (present) {
        found[count++] = i;
      }
    }
    return Arrays.copyOf(found, count);
  }

  /** A first guess: near neutral unless strong acid or base is plainly in excess. */
  private void start(double lnHydrogen) {
    double acid = totals[0] - 3 * totals[Ion.PO4.component()] - 2 * totals[Ion.CO3.component()];
    double base = -totals[0] - totals[Ion.NH4.component()];
    if (!Double.isNaN(lnHydrogen)) {
      x[0] = lnHydrogen;
    } else if (acid > 1e-7) {
      x[0] = Math.log(acid);
    } else if (base > 1e-7) {
      x[0] = -14 * Constants.LN10 - Math.log(base);
    } else {
      x[0] = -7 * Constants.LN10;
    }
    for (int c = 1; c < totals.length; c++) {
      if (place[c] >= 0) {
        x[c] = Math.log(totals[c]);
      }
    }
    x[Ion.PO4.component()] -= 10 * Constants.LN10;
    x[Ion.CO3.component()] -= 5 * Constants.LN10;
  }

  /** Scales each free component to its total, which brings a bad guess near. */
  void approach(Activity activity) {
    hold(activity);
    for (int round = 0; round < 2; round++) {
      evaluate();
      double[] have = new double[totals.length];
      for (int i : active) {
        for (int k = 0; k < table.component[i].length; k++) {
          have[table.component[i][k]] += table.number[i][k] * molality[i];
        }
      }
      for (int c : unknown) {
        if (c != 0) {
          x[c] += Math.log(totals[c] / have[c]);
        }
      }
    }
  }

  /** Solves the balances; false if it does not settle. */
  boolean solve(Activity activity) {
    hold(activity);
    evaluate();
    for (int i = 0; i < MAX_STEPS; i++) {
      double longest = newton();
      if (!(longest < Double.POSITIVE_INFINITY)) {
        return false;
      }
      if (longest <= SURE_STEP) {
        move(1);
        evaluate();
        if (longest < CLOSE_ENOUGH) {
          return true;
        }
      } else {
        search(Math.min(1, LONGEST_STEP / longest));
      }
    }
    return false;
  }

  private void hold(Activity activity) {
    for (int i : active) {
      constant[i] =
          lnK[i]
              - Constants.LN10
                  * (activity.singleCharge * table.debye[i]
                      + activity.capped * table.salting[i]
                      + activity.fading * table.fade[i]);
    }
  }

  private void evaluate() {
    for (int i : active) {
      double sum = constant[i];
      int[] component = table.component[i];
      int[] number = table.number[i];
      for (int k = 0; k < component.length; k++) {
        sum += number[k] * x[component[k]];
      }
      molality[i] = Math.exp(sum);
    }
  }

  /**
   * Puts Newton's step in {@link #step} and returns its longest part; infinite if there is none.
   */
  private double newton() {
    assemble();
    if (!Cholesky.solve(hessian, step, unknown.length)) {
      return Double.POSITIVE_INFINITY;
    }
    double longest = 0;
    for (double part : step) {
      double size = Math.abs(part);
      // a NaN must not hide behind Math.max order
      longest = size > longest || Double.isNaN(size) ? size : longest;
    }
    return longest;
  }

  private void assemble() {
    for (int r = 0; r < unknown.length; r++) {
      step[r] = totals[unknown[r]];
      Arrays.fill(hessian[r], 0);
    }
    for (int i : active) {
      int[] component = table.component[i];
      int[] number = table.number[i];
      double m = molality[i];
      for (int k = 0; k < component.length; k++) {
        int row = place[component[k]];
        if (row >= 0) {
          double share = number[k] * m;
          step[row] -= share;
          for (int l = 0; l < component.length; l++) {
            int column = place[component[l]];
            if (column >= 0) {
              hessian[row][column] += share * number[l];
            }
          }
        }
      }
    }
  }

  private void move(double scale) {
    for (int r = 0; r < unknown.length; r++) {
      x[unknown[r]] += scale * step[r];
    }
  }

  private void search(double scale) {
    double before = potential();
    double tried = scale;
    move(tried);
    evaluate();
    while (!(potential() <= before) && tried > 1e-9) {
      move(-tried / 2);
      tried /= 2;
      evaluate();
    }
  }

  private double potential() {
    double sum = 0;
    for (int i : active) {
      sum += molality[i];
    }
    for (int c : unknown) {
      sum -= totals[c] * x[c];
    }
    return sum;
  }

  /** Of what is dissolved in what form at the moment, mol/kg. */
  double ionicStrength() {
    double sum = 0;
    for (int i : active) {
      sum += molality[i] * table.charge[i] * table.charge[i];
    }
    return sum / 2;
  }

  /** Net charge, mol/kg: 0 unless the pH is given. */
  double netCharge() {
    double sum = 0;
    for (int i : active) {
      sum += molality[i] * table.charge[i];
    }
    return sum;
  }

  double lnHydrogen() {
    return x[0];
  }

  /** mol/kg by species. */
  double[] molalities() {
    return molality.clone();
  }
}
