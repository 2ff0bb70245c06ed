package feedwitness.site;

import java.util.List;
import java.util.Optional;

/**
 * A mail server that takes messages on, and who gets them.
 *
 * @param server host name or numeric address
 * @param port 1 to 65535
 * @param login empty for a server that asks for none
 * @param from the sender's address
 * @param to who gets every message, at least one
 * @param escalateTo who gets those about alarms nobody acknowledged besides
 * @param least messages that matter less are not sent
 * @param caFile PEM file with the certificate authority to trust in place of the system's
 */
public record MailRoute(
    String server,
    int port,
    Security security,
    Optional<Login> login,
    String from,
    List<String> to,
    List<String> escalateTo,
    Urgency least,
    Optional<String> caFile) {
  public MailRoute {
    to = List.copyOf(to);
    escalateTo = List.copyOf(escalateTo);
  }

  /** How the way to the server is protected. */
  public enum Security {
    /** TLS from the first octet. */
    TLS,
    /** Begins in the clear and changes over before anything is said; never goes on without. */
    STARTTLS,
    /** Nothing is hidden from whoever listens in. */
    NONE
  }

  /**
   * Who we are to the server.
   *
   * @param passwordFile read at each delivery; its content is never shown or kept
   */
  public record Login(String user, String passwordFile) {}
}
