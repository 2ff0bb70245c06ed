package feedwitness.ledger;

import java.time.Instant;

/**
 * The (boot, sequence) up to which everything is safe on disk; sequence 0 before the first.
 *
 * @param syncedAt when the store last forced to disk, wall time
 */
public record DurableMark(int boot, long sequence, Instant syncedAt) {}
