/**
 * Since when, and by how much, a feed line delivers other than usual. Takes readings of a line's
 * points in order and gives findings. Conductivity in mS/cm at 25 °C, temperature in °C, time in
 * seconds of one axis that never goes back. A {@code DriftWatch} is for one thread; its state is a
 * compact run of octets. Not here: why (that is {@code diagnosis}), alarms, storage.
 */
@NullMarked
package feedwitness.watch.drift;

import org.jspecify.annotations.NullMarked;
