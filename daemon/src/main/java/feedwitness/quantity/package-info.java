/**
 * The shared vocabulary: units, identifiers, octets, addresses and time. Everything here is an
 * immutable value or a port to a clock, knows no other room, and may be used by all of them.
 *
 * <p>Units: conductivity in mS/cm, temperature in °C, time in nanoseconds (monotonic) and
 * milliseconds since 1970 (wall), unless a name says otherwise. Thread rule: values are free to
 * cross threads. Not here: anything that measures, decides or talks to the world.
 */
@NullMarked
package feedwitness.quantity;

import org.jspecify.annotations.NullMarked;
