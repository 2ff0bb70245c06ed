package feedwitness.publish;

import feedwitness.publish.access.AccessSettings;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** The names this service answers to: any other is a stranger's that was made to lead here. */
final class Hosts {
  private static final Pattern V4 = Pattern.compile("[0-9]{1,3}(\\.[0-9]{1,3}){3}");
  private static final Pattern V6 = Pattern.compile("[0-9A-Fa-f:.]{2,45}");

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
    return names.contains(name)
        || (open && numeric(name).filter(each -> same(each, here)).isPresent());
  }

  private static boolean same(InetAddress one, InetAddress other) {
    return Arrays.equals(one.getAddress(), other.getAddress());
  }

  /** An address in digits, IPv6 with or without brackets; no name is ever looked up. */
  static Optional<InetAddress> numeric(String text) {
    boolean brackets = text.startsWith("[") && text.endsWith("]");
    String address = brackets ? text.substring(1, text.length() - 1) : text;
    if (!(V4.matcher(address).matches()
        || (address.contains(":") && V6.matcher(address).matches()))) {
      return Optional.empty();
    }
    try {
      return Optional.of(InetAddress.getByName(address));
    } catch (UnknownHostException e) {
      return Optional.empty();
    }
  }

  static String withoutPort(String host) {
    int colon = host.lastIndexOf(':');
    return colon > host.lastIndexOf(']') ? host.substring(0, colon) : host;
  }
}
