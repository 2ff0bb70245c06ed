/**
 * Turns frames into what the instrument said. An {@link Indication} is kept untouched for ever;
 * what did not arrive is a {@link Missing} with its cause. Pure. Numbers are in the instrument's
 * own units, named beside them. Not here: calibration, compensation, judgement.
 */
@NullMarked
package feedwitness.sample;

import org.jspecify.annotations.NullMarked;
