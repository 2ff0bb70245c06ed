package feedwitness.check;

import feedwitness.quantity.Stamp;
import java.time.Instant;

/**
 * A place in the recorded measurements.
 *
 * @param boot counts starts of the service, from 1
 * @param sequence of the measurement within the boot
 * @param at wall time, for people and for interpolating
 */
public record Mark(int boot, long sequence, Instant at) implements Comparable<Mark> {

  /** Of a sample. */
  public static Mark of(Stamp stamp) {
    return new Mark(stamp.boot(), stamp.sequence(), stamp.wall());
  }

  /** {@code boot-sequence}. */
  public String id() {
    return boot + "-" + sequence;
  }

  @Override
  public int compareTo(Mark other) {
    int byBoot = Integer.compare(boot, other.boot);
    return byBoot != 0 ? byBoot : Long.compare(sequence, other.sequence);
  }

  String toText() {
    return boot + "-" + sequence + "@" + at;
  }

  static Mark parse(String text) {
    int dash = text.indexOf('-');
    int when = text.indexOf('@');
    if (dash < 1 || when < dash) {
      throw new IllegalArgumentException("'%s' is no boot-sequence@time".formatted(text));
    }
    return new Mark(
        Integer.parseInt(text.substring(0, dash)),
        Long.parseLong(text.substring(dash + 1, when)),
        Instant.parse(text.substring(when + 1)));
  }
}
