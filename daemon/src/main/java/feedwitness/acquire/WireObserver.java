package feedwitness.acquire;

import feedwitness.frame.FrameOutcome;
import feedwitness.quantity.Octets;
import feedwitness.sample.DecodeOutcome;

/** Looks over a session's shoulder. Called on the session's thread; must return at once. */
public interface WireObserver {
  /** Nobody looks. */
  WireObserver NONE = new WireObserver() {};

  default void sent(Octets octets) {}

  default void received(Octets octets) {}

  default void framed(FrameOutcome outcome) {}

  default void decoded(DecodeOutcome outcome) {}

  /** The port was opened. */
  default void opened() {}

  /** The port could not be opened or was lost. */
  default void trouble(String words) {}
}
