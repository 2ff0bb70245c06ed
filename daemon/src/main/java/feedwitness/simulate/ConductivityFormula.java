package feedwitness.simulate;

/** Conductivity of what flows in the nursery. The same question always has the same answer. */
interface ConductivityFormula {

  /** mS/cm at 25 °C. */
  double at25(Liquid liquid);

  /** mS/cm at the liquid's own temperature, as a probe without compensation sees it. */
  double raw(Liquid liquid);

  /**
   * Grams of feed per litre that bring water of this mineral content to a strength.
   *
   * @param strength mS/cm at 25 °C, minerals included; at or below them the answer is 0
   */
  double saltFor(double mineral, double strength);
}
