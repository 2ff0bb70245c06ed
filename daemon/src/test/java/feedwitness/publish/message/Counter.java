package feedwitness.publish.message;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocket;

/** A server on loopback that behaves as told, well or badly: one thread a guest. */
final class Counter implements AutoCloseable {
  private final ServerSocket door = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
  private final List<Socket> guests = new CopyOnWriteArrayList<>();
  private final AtomicInteger served = new AtomicInteger();
  private final List<String> heard = new CopyOnWriteArrayList<>();

  /** What happens to a guest. */
  @FunctionalInterface
  interface Behaviour {
    void serve(Guest guest) throws Exception;
  }

  Counter(Behaviour behaviour) throws IOException {
    Thread porter = new Thread(() -> admit(behaviour), "test-porter");
    porter.setDaemon(true);
    porter.start();
  }

  /** A port nobody listens on. */
  static int closedPort() throws IOException {
    try (ServerSocket probe = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return probe.getLocalPort();
    }
  }

  int port() {
    return door.getLocalPort();
  }

  /** How many came in. */
  int served() {
    return served.get();
  }

  /** Lines heard in order. */
  List<String> heard() {
    return List.copyOf(heard);
  }

  private void admit(Behaviour behaviour) {
    while (!door.isClosed()) {
      try {
        Socket socket = door.accept();
        guests.add(socket);
        served.incrementAndGet();
        Thread thread = new Thread(() -> serve(behaviour, socket), "test-counter");
        thread.setDaemon(true);
        thread.start();
      } catch (IOException closed) {
        return;
      }
    }
  }

  private void serve(Behaviour behaviour, Socket socket) {
    try (socket) {
      behaviour.serve(new Guest(socket));
    } catch (Exception left) {
      // Guests leave when they have had enough: that is what is tested.
      heard.add("left: " + left.getMessage());
    }
  }

  @Override
  public void close() throws IOException {
    door.close();
    for (Socket each : guests) {
      each.close();
    }
  }

  /** A connection being served. */
  final class Guest {
    private Socket socket;
    private InputStream in;

    Guest(Socket socket) throws IOException {
      this.socket = socket;
      this.in = new BufferedInputStream(socket.getInputStream());
    }

    void say(String... lines) throws IOException {
      for (String line : lines) {
        raw(line + "\r\n");
      }
    }

    void raw(String text) throws IOException {
      socket.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
      socket.getOutputStream().flush();
    }

    /** The next line; empty at the end. */
    String hear() throws IOException {
      ByteArrayOutputStream line = new ByteArrayOutputStream();
      for (int octet = in.read(); octet >= 0 && octet != '\n'; octet = in.read()) {
        line.write(octet);
      }
      String text = line.toString(StandardCharsets.UTF_8).strip();
      heard.add(text);
      return text;
    }

    String hear(int octets) throws IOException {
      return new String(in.readNBytes(octets), StandardCharsets.UTF_8);
    }

    /** Up to an empty line. */
    void hearHeaders() throws IOException {
      String line = hear();
      while (!line.isEmpty()) {
        line = hear();
      }
    }

    /** Up to the dot that ends a mail. */
    void hearMail() throws IOException {
      String line = hear();
      while (!line.equals(".")) {
        line = hear();
      }
    }

    void secure(SSLContext context) throws IOException {
      SSLSocket secure =
          (SSLSocket) context.getSocketFactory().createSocket(socket, null, socket.getPort(), true);
      secure.setUseClientMode(false);
      secure.startHandshake();
      socket = secure;
      in = new BufferedInputStream(secure.getInputStream());
    }

    /** Says nothing more until the guest leaves. */
    void hang() throws IOException {
      while (in.read() >= 0) {
        // takes all and answers nothing
      }
    }

    /** One octet every now and then, for as long as the guest bears it. */
    void trickle(String start) throws Exception {
      raw(start);
      for (int i = 0; i < 1000; i++) {
        raw("x");
        Thread.sleep(50);
      }
    }

    void flood(String start) throws IOException {
      raw(start);
      String much = "x".repeat(10_000);
      for (int i = 0; i < 1_000; i++) {
        raw(much);
      }
    }
  }
}
