/**
 * From indication to measurement: calibration, compensation to 25 °C, standard uncertainty, quality
 * flags, and the basis that made it. Pure functions; conductivity in mS/cm, temperature in °C,
 * uncertainties are standard uncertainties (JCGM 100) in the unit of their quantity, NaN where
 * unknown. Not here: storage, limits, alarms.
 */
@NullMarked
package feedwitness.measurement;

import org.jspecify.annotations.NullMarked;
