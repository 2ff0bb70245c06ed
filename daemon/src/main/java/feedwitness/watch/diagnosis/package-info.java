/**
 * Likely causes of a drift, ranked by what the evidence speaks for and against, and the tests that
 * would decide. Says that it cannot tell where the evidence does not separate. Pure; no units but
 * those in names. Not here: finding the drift.
 */
@NullMarked
package feedwitness.watch.diagnosis;

import org.jspecify.annotations.NullMarked;
