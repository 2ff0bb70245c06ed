package feedwitness.acquire;

import feedwitness.quantity.Octets;
import feedwitness.wire.PortOpener;

/**
 * One answer that a session got from the outside, and when. Everything a session does follows from
 * these.
 *
 * @param wire number of the wire, from 1, in the order of the port plans
 * @param nanos monotonic, since the tape began
 * @param wallMillis wall clock, milliseconds since 1970-01-01 UTC
 * @param octets read or sent; none for other kinds and for a wire that stayed quiet
 * @param words why a wire was lost or not opened; otherwise empty
 */
record TapeEvent(int wire, long nanos, long wallMillis, Kind kind, Octets octets, String words) {

  /** What happened. */
  enum Kind {
    OPENED,
    REFUSED_NO_SUCH_PORT,
    REFUSED_TAKEN,
    REFUSED_NO_PERMISSION,
    REFUSED_FAILED,
    READ,
    SENT,
    LOST,
    RESTED;

    static Kind of(PortOpener.Why why) {
      return valueOf("REFUSED_" + why.name());
    }

    /** Why it was refused; only for refusals. */
    PortOpener.Why why() {
      return PortOpener.Why.valueOf(name().substring("REFUSED_".length()));
    }

    boolean isRefusal() {
      return name().startsWith("REFUSED_");
    }
  }
}
