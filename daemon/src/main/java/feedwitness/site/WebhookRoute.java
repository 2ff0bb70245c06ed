package feedwitness.site;

import java.util.Optional;

/**
 * A receiver of signed HTTP requests.
 *
 * @param name of the channel, unique
 * @param url http or https, without user, password or fragment
 * @param secretFile key of the signature, read at each delivery; never shown or kept
 * @param reach where its address must lie
 * @param least messages that matter less are not sent
 * @param caFile PEM file with the certificate authority to trust in place of the system's
 */
public record WebhookRoute(
    String name,
    String url,
    String secretFile,
    Reach reach,
    Urgency least,
    Optional<String> caFile) {

  /** Classes of addresses. A receiver is reached in its own class and in no other. */
  public enum Reach {
    /** Anywhere in the internet. */
    PUBLIC,
    /** The nursery's own network: 10/8, 172.16/12, 192.168/16, fc00::/7. */
    PRIVATE,
    /** This machine. */
    LOOPBACK,
    /** Machines on the same cable: 169.254/16, fe80::/10. */
    LINK_LOCAL
  }
}
