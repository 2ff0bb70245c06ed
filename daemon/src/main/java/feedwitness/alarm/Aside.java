package feedwitness.alarm;

import feedwitness.quantity.Stamp;
import java.time.Instant;
import java.util.Optional;

/**
 * An alarm was shelved or taken out of service.
 *
 * @param who did it
 * @param note why; may be empty
 * @param at since when
 * @param until when it ends by itself; empty for out of service, which somebody must end
 */
public record Aside(String who, String note, Stamp at, Optional<Instant> until) {}
