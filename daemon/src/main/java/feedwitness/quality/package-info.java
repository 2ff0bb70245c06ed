/**
 * Quality tests and the flags they raise. A flag qualifies a measurement, it never deletes or
 * changes one; too little evidence is unknown, never good. Pure but for the {@link
 * feedwitness.quality.QualityJudge}, which remembers its point's past, for one thread. Bit numbers
 * of flags are kept in the store and never change. Not here: alarms, advice.
 */
@NullMarked
package feedwitness.quality;

import org.jspecify.annotations.NullMarked;
