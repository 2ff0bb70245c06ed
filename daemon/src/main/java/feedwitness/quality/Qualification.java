package feedwitness.quality;

import feedwitness.quantity.PointName;
import java.time.Instant;

/**
 * Flags that later readings gave reason to add to earlier ones of the same probe. The earlier ones
 * stay as they are; this is evidence beside them. It speaks of what the point's probe indicated
 * from the first to the last of these sequences, both included: not of readings typed in or
 * imported meanwhile, and not of messages that were missing ({@link Flags#withLater}).
 *
 * @param boot of all readings spoken of
 * @param firstSequence of the boot
 * @param lastSequence at least {@code firstSequence}, below that of the reading that gave reason
 * @param flags to add, at least one
 * @param when the reading that gave reason came, by the wall clock; as dated as that reading
 */
public record Qualification(
    PointName point, int boot, long firstSequence, long lastSequence, Flags flags, Instant when) {

  public Qualification {
    if (firstSequence > lastSequence || flags.isEmpty()) {
      throw new IllegalArgumentException(
          "nothing is said of %s from %s-%s to %s-%s"
              .formatted(point, boot, firstSequence, boot, lastSequence));
    }
  }

  /** Whether it speaks of that sequence of that boot, if its point's probe indicated something. */
  public boolean covers(int ofBoot, long sequence) {
    return ofBoot == boot && sequence >= firstSequence && sequence <= lastSequence;
  }
}
