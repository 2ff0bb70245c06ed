package feedwitness.solution;

/** Placeholder replaced below. */
final class ModelUncertainty {
  ModelUncertainty(ReactionTable table) {}

  double standard(Composition composition, Solution solution) {
    return 0.01 * solution.conductivity;
  }
}
