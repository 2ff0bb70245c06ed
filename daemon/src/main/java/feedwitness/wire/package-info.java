/**
 * Moves octets over serial ports and TCP serial servers behind one interface. Knows nothing of
 * conductivity, frames or profiles. Blocking, one thread a port, owned by the caller; time-outs are
 * real time in milliseconds. The only room that imports the serial library. Not here: retries and
 * polling (acquire).
 */
@NullMarked
package feedwitness.wire;

import org.jspecify.annotations.NullMarked;
