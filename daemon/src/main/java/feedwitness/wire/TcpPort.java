package feedwitness.wire;

import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.Octets;
import feedwitness.wire.PortOpener.Outcome;
import feedwitness.wire.PortOpener.Why;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;

/** A connection to a TCP serial server that passes octets through unchanged. */
final class TcpPort implements Port {
  private static final int CONNECT_MILLIS = 3000;

  private final Socket socket;
  private final InputStream input;
  private final String text;
  private final byte[] buffer = new byte[4096];

  private TcpPort(Socket socket, String text) throws IOException {
    this.socket = socket;
    this.input = socket.getInputStream();
    this.text = text;
  }

  static Outcome connect(LinkAddress.Tcp address) {
    Socket socket = new Socket();
    try {
      socket.connect(new InetSocketAddress(address.host(), address.port()), CONNECT_MILLIS);
      socket.setKeepAlive(true);
      socket.setTcpNoDelay(true);
      return new Outcome.Opened(new TcpPort(socket, address.text()));
    } catch (IOException e) {
      quietly(socket);
      return new Outcome.Refused(
          Why.NO_SUCH_PORT,
          "%s does not answer (%s); check that the serial server is on and its address right"
              .formatted(address.text(), e.getMessage()));
    }
  }

  @Override
  public Octets read(int timeoutMillis) throws PortLostException {
    try {
      socket.setSoTimeout(timeoutMillis);
      int count = input.read(buffer);
      if (count < 0) {
        throw lost("the serial server closed the connection");
      }
      return Octets.of(buffer, 0, count);
    } catch (SocketTimeoutException e) {
      return Octets.NONE;
    } catch (PortLostException e) {
      throw e;
    } catch (IOException e) {
      throw lost(String.valueOf(e.getMessage()));
    }
  }

  @Override
  public void write(Octets octets) throws PortLostException {
    try {
      socket.getOutputStream().write(octets.toArray());
    } catch (IOException e) {
      throw lost(String.valueOf(e.getMessage()));
    }
  }

  private PortLostException lost(String why) {
    return new PortLostException(
        "%s is gone: %s; check the serial server and its network cable".formatted(text, why));
  }

  @Override
  public void discardInput() {
    try {
      while (input.available() > 0 && input.read(buffer) > 0) {
        // Thrown away.
      }
    } catch (IOException e) {
      // The next read or write meets the same failure and reports it.
    }
  }

  @Override
  public void close() {
    quietly(socket);
  }

  private static void quietly(Socket socket) {
    try {
      socket.close();
    } catch (IOException e) {
      // Nothing more can be done for it.
    }
  }
}
