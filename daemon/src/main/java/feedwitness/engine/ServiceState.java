package feedwitness.engine;

import java.time.Duration;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * What of the service itself is watched.
 *
 * @param halted why nothing is being recorded; empty while all is well
 * @param freeOctets of the disk the history is on
 * @param floorOctets recording stops below
 * @param silence a probe of which nothing at all is heard for so long has no data; longer where the
 *     clock runs fast
 */
public record ServiceState(
    Supplier<Optional<String>> halted,
    LongSupplier freeOctets,
    long floorOctets,
    Duration silence) {
  /** A probe that is heard reports its own silence much sooner; this is for one that cannot. */
  public static final Duration USUAL_SILENCE = Duration.ofSeconds(90);
}
