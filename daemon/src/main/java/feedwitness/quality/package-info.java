/**
 * Quality tests and the flags they raise. A flag qualifies a measurement, it never deletes or
 * changes one; too little evidence is unknown, never good. Pure. Bit numbers of flags are kept in
 * the store and never change. Not here: alarms, advice.
 */
@NullMarked
package feedwitness.quality;

import org.jspecify.annotations.NullMarked;
