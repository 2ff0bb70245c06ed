package feedwitness.wire;

import java.io.IOException;

/** The other end of the wire is gone: pulled, switched off, or the connection broke. */
public final class PortLostException extends IOException {
  public PortLostException(String message) {
    super(message);
  }
}
