package feedwitness.solution;

/** One composition at one temperature, worked out, whatever its range. */
final class Solution {
  final Water water;
  final Speciation dissolved;
  final Bulk bulk;

  /** Equivalent conductivities by species, S cm²/eq. Not to be changed. */
  final double[] lambda;

  /** What each species conducts, mS/cm. Not to be changed. */
  final double[] share;

  /** mS/cm. */
  final double conductivity;

  Solution(Water water, Speciation dissolved, Bulk bulk, double[] lambda, Conduction conduction) {
    this.water = water;
    this.dissolved = dissolved;
    this.bulk = bulk;
    this.lambda = lambda;
    share = new double[lambda.length];
    double sum = 0;
    for (int i = 0; i < lambda.length; i++) {
      share[i] = conduction.conductivity(i, dissolved, bulk, lambda);
      sum += share[i];
    }
    conductivity = sum;
  }
}
