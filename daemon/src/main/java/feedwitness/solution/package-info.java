/**
 * What is known of conducting solutions: for now potassium chloride standards and ISO 7888. Pure
 * functions of temperature and composition with stated validity and sources. Conductivity in mS/cm,
 * temperature in °C. Asked by others, asks nobody.
 */
@NullMarked
package feedwitness.solution;

import org.jspecify.annotations.NullMarked;
