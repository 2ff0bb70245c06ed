package feedwitness.quantity;

import java.time.Instant;

/**
 * When a sample arrived, taken on the wire thread. Order is (boot, sequence), never wall time: a
 * clock that jumps must not reorder or merge samples.
 *
 * @param boot counts starts of the service over one store, from 1
 * @param sequence counts samples within the boot, from 1
 * @param monotonicNanos a clock that never jumps, arbitrary origin within the boot
 * @param wallMillis milliseconds since 1970-01-01 UTC as the wall clock had it
 * @param dated whether the wall clock could be trusted; if not, the sample has no date yet
 */
public record Stamp(int boot, long sequence, long monotonicNanos, long wallMillis, boolean dated)
    implements Comparable<Stamp> {

  /** The wall time; meaningless unless {@link #dated()}. */
  public Instant wall() {
    return Instant.ofEpochMilli(wallMillis);
  }

  /** {@code boot-sequence}, the identifier used towards the outside. */
  public String id() {
    return boot + "-" + sequence;
  }

  @Override
  public int compareTo(Stamp other) {
    int byBoot = Integer.compare(boot, other.boot);
    return byBoot != 0 ? byBoot : Long.compare(sequence, other.sequence);
  }
}
