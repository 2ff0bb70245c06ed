package feedwitness.solution;

/**
 * How an ion conducts.
 *
 * @param lambda25 limiting conductivity at 25 °C, S cm²/eq
 * @param t2 quadratic course of the limiting conductivity with °C, any scale; 0 with t1 and t0 both
 *     0 for inverse viscosity
 * @param size distance of closest approach, ångström
 * @param viscosityPower how strongly the viscosity of the solution slows it
 * @param acidLoss loss in strong solutions, of H+ alone, kg/mol
 * @param crowding loss above 4 mol/kg, kg/mol
 */
record Mobility(
    double lambda25,
    double t2,
    double t1,
    double t0,
    double size,
    double viscosityPower,
    double acidLoss,
    double crowding) {
  static final Mobility NONE = new Mobility(0, 0, 0, 0, 0, 0, 0, 0);

  /**
   * Limiting conductivity, S cm²/eq.
   *
   * @param thinning (η_water(25 °C)/η_water(T))^0.95, for ions whose own course is not known
   */
  double limitingAt(double celsius, double thinning) {
    if (t0 == 0) {
      return lambda25 * thinning;
    }
    return lambda25 * ((t2 * celsius + t1) * celsius + t0) / ((t2 * 25 + t1) * 25 + t0);
  }
}
