package feedwitness.wire;

import feedwitness.quantity.Octets;

/** An open wire. Used by one thread; {@link #close()} may come from another. */
public interface Port extends AutoCloseable {

  /**
   * Waits for octets.
   *
   * @param timeoutMillis longest wait, real time, ≥ 1
   * @return what arrived; empty if the wire stayed quiet
   * @throws PortLostException if the wire is gone
   */
  Octets read(int timeoutMillis) throws PortLostException;

  /**
   * Sends octets.
   *
   * @throws PortLostException if the wire is gone
   */
  void write(Octets octets) throws PortLostException;

  /** Throws away what has arrived and was not read. */
  void discardInput();

  @Override
  void close();
}
