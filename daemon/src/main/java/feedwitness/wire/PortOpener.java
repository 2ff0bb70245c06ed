package feedwitness.wire;

import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.SerialSettings;

/** Opens wires. */
public interface PortOpener {

  /** Resolves the address anew and opens it; takes at most a few seconds. */
  Outcome open(LinkAddress link, SerialSettings settings);

  /** A port that cannot be opened is an expected outcome. */
  sealed interface Outcome {
    record Opened(Port port) implements Outcome {}

    /**
     * Not opened.
     *
     * @param detail item and remedy, for people
     */
    record Refused(Why why, String detail) implements Outcome {}
  }

  /** Why a port was not opened. */
  enum Why {
    NO_SUCH_PORT,
    TAKEN,
    NO_PERMISSION,
    FAILED
  }
}
