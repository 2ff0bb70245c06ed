package feedwitness.settings;

/**
 * Where the page is served.
 *
 * @param host name or address, an IPv6 address without its brackets
 * @param port 0 to 65535; 0 lets the system choose a free one
 */
public record ListenAddress(String host, int port) {
  /** This machine only. */
  public static final ListenAddress DEFAULT = new ListenAddress("127.0.0.1", 8460);

  /**
   * Reads {@code HOST:PORT}, an IPv6 address in brackets.
   *
   * @throws IllegalArgumentException if it is no such text, saying why
   */
  public static ListenAddress parse(String text) {
    int colon = text.lastIndexOf(':');
    String host = colon > 0 ? text.substring(0, colon) : "";
    boolean bracketed = host.length() > 2 && host.startsWith("[") && host.endsWith("]");
    if (bracketed) {
      host = host.substring(1, host.length() - 1);
    }
    String digits = text.substring(colon + 1);
    int port = digits.matches("[0-9]{1,5}") ? Integer.parseInt(digits) : -1;
    boolean shape = bracketed ? host.matches("[0-9a-fA-F:.]+") : host.matches("[0-9A-Za-z._-]+");
    if (!shape || port < 0 || port > 65_535) {
      throw new IllegalArgumentException(
          "'%s' is not HOST:PORT with a port from 0 to 65535, such as %s"
              .formatted(text, DEFAULT.text()));
    }
    return new ListenAddress(host, port);
  }

  /** Whether only this machine can reach it. */
  public boolean loopback() {
    return host.equals("localhost") || host.equals("::1") || host.startsWith("127.");
  }

  /** As {@link #parse} reads it. */
  public String text() {
    return (host.contains(":") ? "[" + host + "]" : host) + ":" + port;
  }
}
