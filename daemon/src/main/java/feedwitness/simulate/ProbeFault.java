package feedwitness.simulate;

/**
 * What is wrong with a probe this second.
 *
 * @param inAir hangs in air or bubbles
 * @param stuck its indication does not move
 * @param temperature what a failed sensor shows, °C; NaN while it works
 * @param standard the probe stands in potassium chloride of this strength, mS/cm at 25 °C; 0 if not
 * @param fouling sensitivity lost in this second, as a share
 */
record ProbeFault(
    boolean inAir, boolean stuck, double temperature, double standard, double fouling) {
  static final ProbeFault NONE = new ProbeFault(false, false, Double.NaN, 0, 0);
}
