package feedwitness.simulate;

import feedwitness.quantity.Octets;
import java.io.IOException;

/**
 * The instrument's end of a cable that can be pulled and plugged in again. What is sent while
 * nobody listens is lost, as on a real wire. One thread sends and receives; any may plug.
 */
interface Plug extends AutoCloseable {

  /** As {@code LinkAddress.parse} reads it; the same before and after replugging. */
  String text();

  /** Sends to whoever listens. */
  void send(Octets octets);

  /** What arrived, waiting for it at most so long; empty if nothing did or the cable is pulled. */
  Octets receive(int timeoutMillis);

  /** Pulls the cable; does nothing if it is pulled already. */
  void unplug();

  /**
   * Plugs it in again; does nothing if it is in.
   *
   * @throws IOException if the system refuses
   */
  void replug() throws IOException;

  @Override
  void close();
}
