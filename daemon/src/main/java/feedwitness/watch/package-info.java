/**
 * Stands watch over what measurements mean together: drift of a feed line, and what may be the
 * cause. Pure functions of measurements, logged changes and time: no I/O, no clock of its own, so
 * live service and replay give the same answer. Not here: alarms and how they are answered.
 */
@NullMarked
package feedwitness.watch;

import org.jspecify.annotations.NullMarked;
