package feedwitness.quantity;

/** Where a wire begins. */
public sealed interface LinkAddress {

  /** As written in the configuration and shown to people. */
  String text();

  /** A serial port by path, best one under {@code /dev/serial/by-id}. */
  record Serial(String path) implements LinkAddress {
    @Override
    public String text() {
      return path;
    }
  }

  /** A TCP serial server; port 1 to 65535. */
  record Tcp(String host, int port) implements LinkAddress {
    @Override
    public String text() {
      return "tcp:" + host + ":" + port;
    }
  }

  /**
   * Reads {@code tcp:HOST:PORT} or a path.
   *
   * @throws IllegalArgumentException if it is neither, saying why
   */
  static LinkAddress parse(String text) {
    if (text.startsWith("tcp:")) {
      int colon = text.lastIndexOf(':');
      String host = colon > 4 ? text.substring(4, colon) : "";
      int port;
      try {
        port = Integer.parseInt(text.substring(colon + 1));
      } catch (NumberFormatException e) {
        port = 0;
      }
      if (host.isBlank() || port < 1 || port > 65535) {
        throw new IllegalArgumentException(
            "'%s' is not tcp:HOST:PORT with a port from 1 to 65535".formatted(text));
      }
      return new Tcp(host, port);
    }
    if (!text.startsWith("/")) {
      throw new IllegalArgumentException(
          "'%s' is neither a device path such as /dev/serial/by-id/… nor tcp:HOST:PORT"
              .formatted(text));
    }
    return new Serial(text);
  }
}
