package feedwitness.publish;

import feedwitness.publish.access.AccessSettings;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;

/** The names this service answers to: any other is a stranger's that was made to lead here. */
final class Hosts {
  private final Set<String> names;
  private final boolean open;

  Hosts(AccessSettings settings) {
    Set<String> all = new HashSet<>(Callers.LOOPBACK_NAMES);
    all.add(settings.listen().hostInUrl());
    all.addAll(settings.names());
    names = Set.copyOf(all);
    open = settings.open();
  }

  /**
   * Whether it is one of them. An address in digits cannot be made to lead elsewhere, so the one
   * the connection came in at is as good as a name.
   */
  boolean allowed(String host, InetAddress here) {
    String name = host.toLowerCase(Locale.ROOT);
    return names.contains(name) || (open && name.equals(literal(here)));
  }

  private static String literal(InetAddress address) {
    String text = address.getHostAddress();
    int zone = text.indexOf('%');
    return address instanceof Inet6Address
        ? "[" + (zone < 0 ? text : text.substring(0, zone)) + "]"
        : text;
  }

  static String withoutPort(String host) {
    int colon = host.lastIndexOf(':');
    return colon > host.lastIndexOf(']') ? host.substring(0, colon) : host;
  }
}
