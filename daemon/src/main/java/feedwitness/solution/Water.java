package feedwitness.solution;

/**
 * Pure water at one temperature, ordinary pressure.
 *
 * @param celsius °C, 0 to 50
 * @param density g/cm³ (Kell 1975)
 * @param viscosity mPa s (Huber et al. 2009)
 * @param permittivity relative, unitless (Malmberg and Maryott 1956)
 */
record Water(double celsius, double density, double viscosity, double permittivity) {

  static Water at(double celsius) {
    return new Water(celsius, kell(celsius), huber(celsius), malmberg(celsius));
  }

  double kelvin() {
    return celsius + Constants.ZERO_CELSIUS;
  }

  /** Debye–Hückel slope A for decimal logarithms, (kg/mol)^½. */
  double slopeA() {
    double et = permittivity * kelvin();
    return 1.82483e6 * Math.sqrt(density) / (et * Math.sqrt(et));
  }

  /** Debye–Hückel B, (kg/mol)^½ per ångström. */
  double slopeB() {
    return 50.2916 * Math.sqrt(density / (permittivity * kelvin()));
  }

  private static double kell(double t) {
    double a =
        ((((-2.8054253e-10 * t + 1.0556302e-7) * t - 4.6170461e-5) * t - 0.0079870401) * t
                    + 16.945176)
                * t
            + 999.83952;
    return a / (1 + 0.01687985 * t) / 1000;
  }

  private static double huber(double t) {
    double x = (t + Constants.ZERO_CELSIUS) / 300;
    return (280.68 * Math.pow(x, -1.9)
            + 511.45 * Math.pow(x, -7.7)
            + 61.131 * Math.pow(x, -19.6)
            + 0.45903 * Math.pow(x, -40))
        / 1000;
  }

  private static double malmberg(double t) {
    return 87.740 - 0.40008 * t + 9.398e-4 * t * t - 1.410e-6 * t * t * t;
  }
}
