package feedwitness.solution;

/**
 * What an ion adds to volume and viscosity.
 *
 * @param charge size of the charge, elementary charges
 * @param molarMass g/mol
 * @param volume at infinite dilution, cm³/mol, with the convention of 0 for H+
 * @param volumeSlope per square root of ionic strength
 * @param viscosityB ln(η/η_water) per mol/kg at 20 °C
 * @param viscosityD its change per mol/kg of ionic strength
 * @param viscositySlope its change per kelvin near 20 °C
 */
record BulkSolute(
    int charge,
    double molarMass,
    double volume,
    double volumeSlope,
    double viscosityB,
    double viscosityD,
    double viscositySlope) {}
