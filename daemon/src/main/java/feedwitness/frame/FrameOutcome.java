package feedwitness.frame;

import feedwitness.quantity.Octets;

/** What a framer made of some octets: a whole message, or a run it had to reject. */
public sealed interface FrameOutcome {

  /** The octets this outcome accounts for. */
  Octets octets();

  /** A whole, undamaged message (for a line: without its terminator). */
  record Frame(Octets octets) implements FrameOutcome {}

  /** Octets that are no message, with why. */
  record Rejection(Octets octets, Reason reason, String detail) implements FrameOutcome {}

  /** Why octets were rejected. */
  enum Reason {
    /** Longer than any message of this protocol may be. */
    TOO_LONG,
    /** Stopped in the middle. */
    INCOMPLETE,
    /** Checksum does not fit the content. */
    BAD_CHECKSUM,
    /** Octets before, between or after messages, or that cannot occur in one. */
    NOISE,
    /** The request we sent, heard back from the bus. */
    ECHO
  }
}
