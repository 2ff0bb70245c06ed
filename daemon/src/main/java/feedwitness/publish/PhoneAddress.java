package feedwitness.publish;

import feedwitness.publish.access.AccessSettings;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.Optional;
import java.util.Set;

/** Where phones find the page. */
final class PhoneAddress {
  private static final Set<String> ANY = Set.of("0.0.0.0", "::", "[::]");

  private PhoneAddress() {}

  /**
   * Begins with the scheme, ends with a slash; empty if others cannot reach the service.
   *
   * @param port this end of the connection of whoever asks
   */
  static Optional<String> of(AccessSettings settings, int port) {
    if (!settings.open()) {
      return Optional.empty();
    }
    if (settings.behindProxy()) {
      return settings.names().stream().findFirst().map(name -> "https://" + name + "/");
    }
    return host(settings)
        .map(
            host ->
                "%s://%s%s/"
                    .formatted(settings.scheme(), host, usual(settings, port) ? "" : ":" + port));
  }

  private static boolean usual(AccessSettings settings, int port) {
    return port == (settings.tls() ? 443 : 80);
  }

  private static Optional<String> host(AccessSettings settings) {
    if (!settings.names().isEmpty()) {
      return Optional.of(settings.names().get(0));
    }
    if (ANY.contains(settings.listen().host())) {
      return ownAddress();
    }
    return settings.listen().isLoopback()
        ? Optional.empty()
        : Optional.of(settings.listen().hostInUrl());
  }

  /** The first address of this machine that others can reach. */
  private static Optional<String> ownAddress() {
    try {
      return NetworkInterface.networkInterfaces()
          .flatMap(NetworkInterface::inetAddresses)
          .filter(address -> address instanceof Inet4Address)
          .filter(address -> !address.isLoopbackAddress() && !address.isLinkLocalAddress())
          .map(InetAddress::getHostAddress)
          .findFirst();
    } catch (SocketException e) {
      return Optional.empty();
    }
  }
}
