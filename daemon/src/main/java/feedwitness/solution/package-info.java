/**
 * What is known of conducting solutions: the conductivity of any feed mixture, its course with
 * temperature and strength, potassium chloride standards, ISO 7888. Pure functions of temperature
 * and composition with stated validity and sources. Conductivity in mS/cm, amounts in mol/kg of
 * water, temperature in °C. Nothing here changes once made, except workspaces that never leave
 * their call, so every thread may ask. Asked by others, asks nobody. No recipes, no instruments.
 */
@NullMarked
package feedwitness.solution;

import org.jspecify.annotations.NullMarked;
