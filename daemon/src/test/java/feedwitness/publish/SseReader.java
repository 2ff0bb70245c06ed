package feedwitness.publish;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** An event stream read off a plain socket, so that a test decides when to read and when not. */
final class SseReader implements AutoCloseable {
  private final Socket socket = new Socket();
  private final BufferedReader in;
  private final String head;

  SseReader(int port, String... headers) throws IOException {
    this(InetAddress.getLoopbackAddress(), "localhost", port, headers);
  }

  SseReader(InetAddress address, String host, int port, String... headers) throws IOException {
    // Small, so that a client that stops reading is soon felt by the server.
    socket.setReceiveBufferSize(4096);
    socket.setSoTimeout(20_000);
    socket.connect(new java.net.InetSocketAddress(address, port));
    StringBuilder request =
        new StringBuilder("GET /api/v1/stream HTTP/1.1\r\nHost: " + host + "\r\n");
    for (String header : headers) {
      request.append(header).append("\r\n");
    }
    socket
        .getOutputStream()
        .write(request.append("\r\n").toString().getBytes(StandardCharsets.UTF_8));
    in = new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
    StringBuilder answer = new StringBuilder();
    for (String line = in.readLine(); line != null && !line.isEmpty(); line = in.readLine()) {
      answer.append(line).append('\n');
    }
    head = answer.toString();
  }

  String head() {
    return head;
  }

  /** The next event's fields, comments as {@code ""}; null once the stream is over. */
  @Nullable Map<String, String> next() throws IOException {
    Map<String, String> fields = new LinkedHashMap<>();
    for (String line = in.readLine(); line != null; line = in.readLine()) {
      if (line.isEmpty() && !fields.isEmpty()) {
        return fields;
      }
      int colon = line.indexOf(':');
      if (colon >= 0) {
        fields.put(line.substring(0, colon), line.substring(colon + 1).strip());
      }
    }
    return null;
  }

  /** The next event of this kind; others and comments are passed over. */
  Map<String, String> event(String kind) throws IOException {
    for (Map<String, String> next = next(); next != null; next = next()) {
      if (kind.equals(next.get("event"))) {
        return next;
      }
    }
    throw new AssertionError("the stream ended without a " + kind);
  }

  /** The data of the next event of this kind. */
  String data(String kind) throws IOException {
    return Objects.requireNonNull(event(kind).get("data"), kind);
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
