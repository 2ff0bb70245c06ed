/**
 * Checks of probes and meters: settling in a standard, error with its uncertainty and verdict, the
 * order as-found, clean, check again, adjust only if needed, as-left; what the history of checks
 * says (loss, drift, when the next is due); and which earlier measurements a failed check casts
 * doubt on. Each fact is a record that can be kept as text fields ({@link CheckEvidence}); nothing
 * is ever rewritten.
 *
 * <p>Units: conductivity mS/cm, temperature °C, errors and tolerances in % of the reference unless
 * a name says otherwise; uncertainties are standard uncertainties unless called expanded (twice
 * that). Time comes in with each call. Pure and immutable, so free to cross threads. Not here:
 * storage, pages, commands, alarms' states.
 */
@NullMarked
package feedwitness.check;

import org.jspecify.annotations.NullMarked;
