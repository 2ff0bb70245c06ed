package feedwitness.publish.access;

import feedwitness.quantity.ListenAddress;
import java.net.InetAddress;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * From where the page may be used.
 *
 * @param names by which others reach the service, lower case, without port; the first is shown to
 *     phones
 * @param key without one nobody but the desk is let in
 * @param tls whether the service itself speaks TLS
 * @param behindProxy whether a reverse proxy that ends TLS stands before it: then a connection from
 *     this machine is nobody at the desk
 * @param own whether an address is this machine's loopback
 */
public record AccessSettings(
    ListenAddress listen,
    List<String> names,
    Optional<AccessKey> key,
    boolean tls,
    boolean behindProxy,
    Predicate<InetAddress> own) {
  public AccessSettings {
    names = List.copyOf(names);
  }

  /** Only the desk, no names, no TLS. */
  public static AccessSettings desk(ListenAddress listen) {
    return new AccessSettings(
        listen, List.of(), Optional.empty(), false, false, InetAddress::isLoopbackAddress);
  }

  /** Whether browsers see the page over TLS, whoever ends it. */
  public boolean secure() {
    return tls || behindProxy;
  }

  /** {@code https} or {@code http}, as browsers see it. */
  public String scheme() {
    return secure() ? "https" : "http";
  }

  /** Whether anybody beyond this machine can be let in. */
  public boolean open() {
    return key.isPresent();
  }
}
