package feedwitness.engine;

import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * What of the service itself is watched.
 *
 * @param halted why nothing is being recorded; empty while all is well
 * @param freeOctets of the disk the history is on
 * @param floorOctets recording stops below
 */
public record ServiceState(
    Supplier<Optional<String>> halted, LongSupplier freeOctets, long floorOctets) {}
