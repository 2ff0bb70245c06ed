/**
 * The grower's sums: fertilizers by formula and by label, source water by its report, grams for a
 * strength or for nutrients, stock and dilution, acid, supplements, and the mixing sheet with what
 * the meter will show. Pure functions on top of {@code solution}; forms come in as plain maps, so
 * that the same rules hold for a recipe file and for the page. Grams, litres, mg/L, mS/cm at 25 °C
 * unless a name says otherwise. Immutable; every thread may ask. Not here: TOML, JSON, files,
 * clocks, and anything that doses.
 */
@NullMarked
package feedwitness.feed;

import org.jspecify.annotations.NullMarked;
