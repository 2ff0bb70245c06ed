package feedwitness.publish;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * Another machine on the loopback network: hands octets on to a service, from an address such as
 * 127.0.0.7. What is inside them, TLS too, goes through untouched.
 */
public final class Relay implements AutoCloseable {
  private final ServerSocket door;
  private final InetAddress from;
  private final int to;
  private final List<Socket> open = new CopyOnWriteArrayList<>();

  /** Listens on a free port of the address and connects from it to a port of 127.0.0.1. */
  public Relay(String address, int to) throws IOException {
    this.from = InetAddress.getByName(address);
    this.to = to;
    this.door = new ServerSocket(0, 16, from);
    daemon(this::serve);
  }

  /** Where it listens. */
  public int port() {
    return door.getLocalPort();
  }

  private void serve() {
    try {
      while (!door.isClosed()) {
        Socket client = door.accept();
        Socket service = new Socket();
        open.addAll(List.of(client, service));
        service.bind(new InetSocketAddress(from, 0));
        service.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), to));
        daemon(() -> pour(client, service));
        daemon(() -> pour(service, client));
      }
    } catch (IOException e) {
      // closed
    }
  }

  private static void pour(Socket from, Socket into) {
    try (from;
        into;
        InputStream in = from.getInputStream();
        OutputStream out = into.getOutputStream()) {
      in.transferTo(out);
    } catch (IOException e) {
      // one side went away, and the other goes with it
    }
  }

  private static void daemon(Runnable work) {
    Thread thread = new Thread(work, "relay");
    thread.setDaemon(true);
    thread.start();
  }

  @Override
  public void close() throws IOException {
    door.close();
    for (Socket socket : open) {
      socket.close();
    }
  }
}
