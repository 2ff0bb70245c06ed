package feedwitness.publish.message;

import feedwitness.site.WebhookRoute.Reach;
import java.net.Inet4Address;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Keeps webhooks from reaching where they should not. It judges addresses, not names: a name that
 * resolves to something else a moment later changes nothing, because the connection is made to the
 * very addresses that were judged. Ranges after the IANA special-purpose address registries (RFC
 * 6890, RFC 8190).
 */
final class AddressGuard {
  private AddressGuard() {}

  /**
   * Those addresses a receiver may be reached at.
   *
   * @throws UnknownHostException if none of them lies where it may; in words for people
   */
  static List<InetAddress> allowed(String host, InetAddress[] resolved, Reach reach)
      throws UnknownHostException {
    List<InetAddress> allowed =
        Arrays.stream(resolved)
            .filter(address -> reach(address).equals(Optional.of(reach)))
            .toList();
    if (allowed.isEmpty()) {
      throw new UnknownHostException(
          "%s is at %s, which is %s, but may only be reached %s; check the address or its 'reach'"
              .formatted(
                  Words.line(host, 100),
                  resolved.length == 0 ? "no address" : resolved[0].getHostAddress(),
                  resolved.length == 0
                      ? "nowhere"
                      : reach(resolved[0]).map(AddressGuard::words).orElse("never allowed"),
                  words(reach)));
    }
    return allowed;
  }

  private static String words(Reach reach) {
    return switch (reach) {
      case PUBLIC -> "in the internet";
      case PRIVATE -> "in a private network";
      case LOOPBACK -> "on this machine";
      case LINK_LOCAL -> "on the same cable";
    };
  }

  /** The class of an address; empty for those that lead nowhere one may send to. */
  static Optional<Reach> reach(InetAddress address) {
    if (address instanceof Inet6Address six) {
      return sixth(six.getAddress());
    }
    return address instanceof Inet4Address four ? fourth(four.getAddress()) : Optional.empty();
  }

  private static Optional<Reach> fourth(byte[] octets) {
    int a = octets[0] & 0xff;
    int b = octets[1] & 0xff;
    int c = octets[2] & 0xff;
    if (a == 127) {
      return Optional.of(Reach.LOOPBACK);
    }
    if (a == 169 && b == 254) {
      return Optional.of(Reach.LINK_LOCAL);
    }
    if (a == 10 || (a == 172 && (b & 0xf0) == 16) || (a == 192 && b == 168)) {
      return Optional.of(Reach.PRIVATE);
    }
    boolean nowhere =
        a == 0
            || a >= 224
            || (a == 100 && (b & 0xc0) == 64)
            || (a == 192 && b == 0 && (c == 0 || c == 2))
            || (a == 192 && b == 88 && c == 99)
            || (a == 198 && (b & 0xfe) == 18)
            || (a == 198 && b == 51 && c == 100)
            || (a == 203 && b == 0 && c == 113);
    return nowhere ? Optional.empty() : Optional.of(Reach.PUBLIC);
  }

  private static Optional<Reach> sixth(byte[] octets) {
    int first = pair(octets, 0);
    if (zeros(octets, 0, 10)) {
      return low(octets);
    }
    if (first == 0x64 && pair(octets, 2) == 0xff9b && zeros(octets, 4, 12)) {
      return onlyPublic(fourth(Arrays.copyOfRange(octets, 12, 16)));
    }
    if (first == 0x2002) {
      return onlyPublic(fourth(Arrays.copyOfRange(octets, 2, 6)));
    }
    if ((first & 0xfe00) == 0xfc00) {
      return Optional.of(Reach.PRIVATE);
    }
    if ((first & 0xffc0) == 0xfe80) {
      return Optional.of(Reach.LINK_LOCAL);
    }
    // Only 2000::/3 is given out; within it 2001::/23 serves protocols, 2001:db8::/32 and
    // 3fff::/20 serve examples.
    boolean global = (first & 0xe000) == 0x2000;
    boolean special =
        (first == 0x2001 && (pair(octets, 2) < 0x200 || pair(octets, 2) == 0xdb8))
            || (first == 0x3fff && pair(octets, 2) < 0x1000);
    return global && !special ? Optional.of(Reach.PUBLIC) : Optional.empty();
  }

  /** {@code ::}, {@code ::1} and IPv4 within IPv6, written in either of its two old ways. */
  private static Optional<Reach> low(byte[] octets) {
    boolean mapped = pair(octets, 10) == 0xffff;
    if (mapped) {
      return fourth(Arrays.copyOfRange(octets, 12, 16));
    }
    boolean one = zeros(octets, 10, 15) && octets[15] == 1;
    return one ? Optional.of(Reach.LOOPBACK) : Optional.empty();
  }

  /** A translator may not be used as a way around. */
  private static Optional<Reach> onlyPublic(Optional<Reach> inner) {
    return inner.filter(reach -> reach == Reach.PUBLIC);
  }

  private static int pair(byte[] octets, int at) {
    return (octets[at] & 0xff) << 8 | (octets[at + 1] & 0xff);
  }

  private static boolean zeros(byte[] octets, int from, int to) {
    for (int i = from; i < to; i++) {
      if (octets[i] != 0) {
        return false;
      }
    }
    return true;
  }
}
