package feedwitness.solution;

/**
 * A solute that is no ion. It takes room, so that there are fewer ions in a litre, and thickens the
 * water they move in; nothing else is modelled.
 *
 * @param name the name in messages
 * @param molarMass g/mol, above 0
 * @param volume partial molar volume at infinite dilution, cm³/mol
 * @param volumeSlope its change with a tenth of the molality, cm³ kg/mol²
 * @param viscosityB ln(η/η_water) per mol/kg at 20 °C
 * @param viscosityD its change with the molality, kg²/mol²
 * @param viscositySlope change of viscosityB with temperature, 1/K near 20 °C
 */
public record NeutralSolute(
    String name,
    double molarMass,
    double volume,
    double volumeSlope,
    double viscosityB,
    double viscosityD,
    double viscositySlope) {

  /**
   * Urea, CO(NH2)2. Volume and viscosity fitted to the CRC table "Concentrative properties of
   * aqueous solutions"; the effect on conductivity is not measured, only inferred from them.
   */
  public static final NeutralSolute UREA =
      new NeutralSolute(
          "urea",
          60.055,
          44.845529921066685,
          -1.1107783955087431,
          0.03521860335747474,
          0.0008727411847711337,
          0.0007);

  public NeutralSolute {
    if (name.isBlank() || !(molarMass > 0)) {
      throw new IllegalArgumentException(
          "a neutral solute needs a name and a molar mass above 0 g/mol: '%s', %s"
              .formatted(name, molarMass));
    }
  }
}
