package feedwitness.solution;

/**
 * In what form a composition is dissolved.
 *
 * <p>Effective for conductivity: pairs fade in strong solutions. Not for solubility.
 */
final class Speciation {
  /** mol/kg by species, in the order of the parameters. Not to be changed. */
  final double[] molality;

  /** mol/kg. */
  final double ionicStrength;

  final double pH;

  /** Net charge, mol/kg: 0 unless the pH was given. */
  final double netCharge;

  Speciation(double[] molality, double ionicStrength, double pH, double netCharge) {
    this.molality = molality;
    this.ionicStrength = ionicStrength;
    this.pH = pH;
    this.netCharge = netCharge;
  }
}
