package feedwitness.solution;

/** Defined constants of the SI (2019), and the permittivity of free space (CODATA 2018). */
final class Constants {
  static final double GAS = 8.314462618;
  static final double AVOGADRO = 6.02214076e23;
  static final double BOLTZMANN = 1.380649e-23;
  static final double PERMITTIVITY = 8.8541878128e-12;
  static final double CHARGE = 1.602176634e-19;
  static final double ZERO_CELSIUS = 273.15;
  static final double LN10 = Math.log(10);

  private Constants() {}
}
