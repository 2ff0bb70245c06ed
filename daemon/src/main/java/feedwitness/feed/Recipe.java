package feedwitness.feed;

import java.util.ArrayList;
import java.util.List;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

/**
 * Grams of each product that come nearest to the nutrients wanted: least squares of the differences
 * relative to the wish, none below zero, none above its limit, ceilings kept. A wish of one
 * priority weighs a thousand times one of the next.
 */
final class Recipe {
  private static final double STEP = 1000;

  /** Prefers fewer grams where products could stand in for each other; far below any wish. */
  private static final double THRIFT = 1e-9;

  /** mg/L below which a wish is not divided by itself. */
  private static final double SMALL = 1;

  private final List<Use> uses;
  private final List<Wish> wishes;
  private final Nutrients base;

  /** mg/L of a wish for a g/L of a product: by wish, by product. */
  private final double[][] gain;

  /**
   * Made ready.
   *
   * @param base mg/L that water and acid bring
   */
  Recipe(List<Use> uses, List<Wish> wishes, Nutrients base) {
    this.uses = uses;
    this.wishes = wishes;
    this.base = base;
    gain = new double[wishes.size()][uses.size()];
    for (int i = 0; i < gain.length; i++) {
      for (int j = 0; j < uses.size(); j++) {
        gain[i][j] = 1000 * wishes.get(i).in(uses.get(j).product().nutrients());
      }
    }
  }

  double gain(int wish, int use) {
    return gain[wish][use];
  }

  /** g/L of each product. Ceilings must leave room above the water. */
  double[] solve() {
    ExpressionsBasedModel model = new ExpressionsBasedModel();
    Variable[] x = new Variable[uses.size()];
    double[] size = new double[uses.size()];
    for (int j = 0; j < x.length; j++) {
      size[j] = size(j);
      x[j] = model.addVariable("x" + j).lower(0).upper(uses.get(j).most() / size[j]);
    }
    Expression off = model.addExpression("off").weight(1);
    for (int j = 0; j < x.length; j++) {
      off.set(x[j], -2 * pull(j, size));
      for (int k = 0; k < x.length; k++) {
        off.set(x[j], x[k], curve(j, k, size) + (j == k ? THRIFT : 0));
      }
    }
    for (int i = 0; i < gain.length; i++) {
      if (wishes.get(i).ceiling()) {
        Expression ceiling = model.addExpression("ceiling" + i).upper(room(i));
        for (int j = 0; j < x.length; j++) {
          ceiling.set(x[j], gain[i][j] * size[j]);
        }
      }
    }
    Optimisation.Result result = model.minimise();
    if (!result.getState().isFeasible()) {
      throw new IllegalStateException("no recipe within bounds: " + result.getState());
    }
    double[] grams = new double[x.length];
    for (int j = 0; j < x.length; j++) {
      double found = result.doubleValue(j) * size[j];
      grams[j] = Math.max(0, Math.min(uses.get(j).most(), found));
    }
    return grams;
  }

  /** mg/L above the water, up to a wish. */
  double room(int wish) {
    return wishes.get(wish).milligrams() - wishes.get(wish).in(base);
  }

  private double weight(int wish) {
    Wish it = wishes.get(wish);
    if (it.ceiling()) {
      return 0;
    }
    double whole = Math.max(SMALL, it.milligrams());
    return Math.pow(STEP, 1 - it.priority()) / (whole * whole);
  }

  /** g/L of a product that alone would meet its nearest wish, so that all are of one size. */
  private double size(int use) {
    double most = 0;
    for (int i = 0; i < gain.length; i++) {
      most = Math.max(most, gain[i][use] / Math.max(SMALL, wishes.get(i).milligrams()));
    }
    return most > 0 ? 1 / most : 1;
  }

  private double pull(int use, double[] size) {
    double sum = 0;
    for (int i = 0; i < gain.length; i++) {
      sum += weight(i) * gain[i][use] * size[use] * room(i);
    }
    return sum;
  }

  private double curve(int a, int b, double[] size) {
    double sum = 0;
    for (int i = 0; i < gain.length; i++) {
      sum += weight(i) * gain[i][a] * size[a] * gain[i][b] * size[b];
    }
    return sum;
  }

  /** What could not be met and which limit holds it. */
  List<String> binding(double[] grams) {
    return new RecipeWords(this, uses, wishes, grams).all();
  }

  /** mg/L of a wish's nutrient in the feed. */
  double reached(int wish, double[] grams) {
    double sum = wishes.get(wish).in(base);
    for (int j = 0; j < grams.length; j++) {
      sum += gain[wish][j] * grams[j];
    }
    return sum;
  }

  /** Ceilings that the water alone passes. */
  List<Wish> impossible() {
    List<Wish> passed = new ArrayList<>();
    for (int i = 0; i < wishes.size(); i++) {
      if (wishes.get(i).ceiling() && room(i) < 0) {
        passed.add(wishes.get(i));
      }
    }
    return passed;
  }

  double ofWater(Wish wish) {
    return wish.in(base);
  }
}
