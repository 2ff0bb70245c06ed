package feedwitness.acquire;

import feedwitness.wire.Port;
import feedwitness.wire.PortLostException;

/** How to get readings out of an open wire. One thread. */
interface Conversation {
  /** Longest that one {@link #step} may wait for octets before it returns to be asked again. */
  int STEP_MILLIS = 100;

  /** A new wire: forget what the old one left half said. */
  void begin();

  /** Does the next bit of work; returns within about a second. */
  void step(Port port) throws PortLostException;
}
