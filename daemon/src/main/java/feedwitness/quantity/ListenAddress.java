package feedwitness.quantity;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Where the page is served.
 *
 * @param host {@code localhost}, a numeric address, or a name; IPv6 without brackets
 * @param port 1 to 65535; 0 lets the system choose a free one
 */
public record ListenAddress(String host, int port) {
  private static final Pattern HOST = Pattern.compile("[0-9A-Za-z._:-]+");
  private static final Pattern LOOPBACK_V4 =
      Pattern.compile("127(\\.(25[0-5]|2[0-4]\\d|1?\\d?\\d)){3}");
  private static final Set<String> LOOPBACK = Set.of("localhost", "::1");

  /** Where the service listens unless told otherwise. */
  public static final ListenAddress DEFAULT = new ListenAddress("127.0.0.1", 8460);

  public ListenAddress {
    if (!HOST.matcher(host).matches()) {
      throw new IllegalArgumentException(
          "'%s' is no host to listen on; use 127.0.0.1".formatted(host));
    }
    if (port < 0 || port > 65535) {
      throw new IllegalArgumentException(
          "port %d of the listen address is outside 0 to 65535".formatted(port));
    }
    host = host.toLowerCase(Locale.ROOT);
  }

  /**
   * Reads {@code HOST:PORT}; an IPv6 host stands in brackets.
   *
   * @throws IllegalArgumentException saying what is wrong with the text
   */
  public static ListenAddress parse(String text) {
    int colon = text.lastIndexOf(':');
    String host = colon < 0 ? "" : text.substring(0, colon);
    if (host.startsWith("[") && host.endsWith("]")) {
      host = host.substring(1, host.length() - 1);
    } else if (host.contains(":")) {
      host = "";
    }
    if (host.isBlank() || !text.substring(colon + 1).matches("\\d{1,5}")) {
      throw new IllegalArgumentException(
          "'%s' is not HOST:PORT such as 127.0.0.1:8460 or [::1]:8460".formatted(text));
    }
    return new ListenAddress(host, Integer.parseInt(text.substring(colon + 1)));
  }

  /** Whether only programs on this machine can reach it; decided without asking a name server. */
  public boolean isLoopback() {
    return LOOPBACK.contains(host) || LOOPBACK_V4.matcher(host).matches();
  }

  /** As it stands in an address line, with brackets around IPv6. */
  public String text() {
    return hostInUrl() + ":" + port;
  }

  /** The host as it stands in an address line. */
  public String hostInUrl() {
    return host.contains(":") ? "[" + host + "]" : host;
  }

  /** The same host, another port. */
  public ListenAddress withPort(int actual) {
    return new ListenAddress(host, actual);
  }
}
