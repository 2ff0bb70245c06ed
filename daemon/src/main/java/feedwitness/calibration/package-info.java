/**
 * Calibration curves: from indicated to calibrated conductivity, both at the temperature of the
 * solution, in mS/cm. Identity until a calibration is recorded. Pure; a curve is never changed, a
 * new one is recorded. Standard solutions on the shelf, what they conduct and what speaks against
 * using them. Not here: temperature compensation (measurement), checks (check).
 */
@NullMarked
package feedwitness.calibration;

import org.jspecify.annotations.NullMarked;
