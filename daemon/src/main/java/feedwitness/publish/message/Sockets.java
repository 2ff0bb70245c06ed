package feedwitness.publish.message;

import java.net.Inet6Address;
import java.net.InetAddress;
import org.jspecify.annotations.Nullable;
import org.tinylog.Logger;

/** Small things about connections. */
final class Sockets {
  private Sockets() {}

  /** Closes whatever it is; nothing is left to be done if that fails. */
  static void close(@Nullable AutoCloseable open) {
    if (open == null) {
      return;
    }
    try {
      open.close();
    } catch (Exception e) {
      Logger.debug("closing a connection: {}", String.valueOf(e.getMessage()));
    }
  }

  /** An address as a mail client calls itself, RFC 5321, 4.1.3. */
  static String literal(InetAddress address) {
    String text = address.getHostAddress();
    int zone = text.indexOf('%');
    String bare = zone < 0 ? text : text.substring(0, zone);
    return address instanceof Inet6Address ? "[IPv6:" + bare + "]" : "[" + bare + "]";
  }
}
