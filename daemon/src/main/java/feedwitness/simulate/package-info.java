/**
 * The virtual nursery: physics of water, feed, injector and probes, seeded and driven by a clock of
 * its own, put on real pseudo-terminals by encoders of its own. It shares no code with the decoders
 * it is the truth for. Conductivity in mS/cm, volume in litres, flow in L/min, temperature in °C,
 * simulated time in seconds. A {@code Nursery} belongs to one thread at a time; a {@code
 * RunningNursery} and a {@code PseudoTerminal} may be used from any. Not here: anything the live
 * service needs.
 */
@NullMarked
package feedwitness.simulate;

import org.jspecify.annotations.NullMarked;
