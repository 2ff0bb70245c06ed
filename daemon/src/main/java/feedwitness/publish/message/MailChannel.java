package feedwitness.publish.message;

import feedwitness.site.MailRoute;
import feedwitness.site.MailRoute.Login;
import feedwitness.site.MailRoute.Security;
import feedwitness.site.MessagePlan;
import feedwitness.site.Urgency;
import jakarta.mail.Address;
import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.Authenticator;
import jakarta.mail.MessagingException;
import jakarta.mail.PasswordAuthentication;
import jakarta.mail.SendFailedException;
import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.SSLSocketFactory;
import org.eclipse.angus.mail.smtp.SMTPTransport;
import org.jspecify.annotations.Nullable;

/**
 * Hands messages to a mail server (RFC 5321, RFC 6409). The way there is opened here rather than by
 * the library, so that one socket can be closed when the time for an attempt is up, whatever the
 * server is doing at that moment.
 */
final class MailChannel implements Channel {
  private final MailRoute route;
  private final Limits limits;
  private final ScheduledExecutorService deadlines;
  private volatile @Nullable Socket open;
  private volatile boolean closed;

  /** Recipients for whom the server took a letter, while others are still to be tried. */
  private final Map<String, Set<Address>> served = new HashMap<>();

  /**
   * A channel.
   *
   * @param deadlines closes sockets; never blocks
   */
  MailChannel(MailRoute route, Limits limits, ScheduledExecutorService deadlines) {
    this.route = route;
    this.limits = limits;
    this.deadlines = deadlines;
  }

  @Override
  public String name() {
    return MessagePlan.MAIL;
  }

  @Override
  public String leadsTo() {
    return "%s by way of %s:%d"
        .formatted(String.join(", ", route.to()), route.server(), route.port());
  }

  @Override
  public Urgency least() {
    return route.least();
  }

  @Override
  public boolean json() {
    return false;
  }

  @Override
  public Delivery deliver(Letter letter) {
    Clockwork clockwork = new Clockwork();
    try (LimitedSocket socket = new LimitedSocket(limits.octets())) {
      Session session = session();
      open = socket;
      clockwork.start(socket);
      Delivery delivered = send(letter, session, socket);
      served.remove(letter.id());
      return delivered;
    } catch (AuthenticationFailedException e) {
      return new Delivery.Misconfigured(
          "%s does not accept user and password; check user and the password file"
              .formatted(route.server()));
    } catch (SecretException e) {
      return new Delivery.Misconfigured(String.valueOf(e.getMessage()));
    } catch (MessagingException | IOException | RuntimeException e) {
      return failed(letter, e, clockwork.rang);
    } finally {
      clockwork.stop();
      open = null;
    }
  }

  private Delivery failed(Letter letter, Exception failure, boolean late) {
    if (failure instanceof SendFailedException partly
        && partly.getValidSentAddresses() != null
        && partly.getValidSentAddresses().length > 0) {
      served
          .computeIfAbsent(letter.id(), id -> new HashSet<>())
          .addAll(List.of(partly.getValidSentAddresses()));
    }
    Delivery delivery =
        late
            ? new Delivery.Later(
                "%s did not take the message within %d s"
                    .formatted(route.server(), limits.whole().toSeconds()))
            : MailFailures.of(failure, route.server());
    boolean some = served.containsKey(letter.id());
    if (!(delivery instanceof Delivery.Refused)) {
      return delivery;
    }
    served.remove(letter.id());
    return some ? new Delivery.Delivered("not to all of them: " + delivery.said()) : delivery;
  }

  @Override
  public void close() {
    closed = true;
    Sockets.close(open);
  }

  private Delivery send(Letter letter, Session session, LimitedSocket socket)
      throws MessagingException, IOException {
    MimeMessage message = MailText.message(session, letter, route);
    Socket way = connected(socket);
    session
        .getProperties()
        .setProperty("mail.smtp.localhost", Sockets.literal(socket.getLocalAddress()));
    SMTPTransport transport = (SMTPTransport) session.getTransport("smtp");
    try {
      transport.connect(way);
      transport.sendMessage(message, remaining(letter, message));
      return new Delivery.Delivered(
          "%s took it: %s"
              .formatted(
                  route.server(),
                  Words.line(String.valueOf(transport.getLastServerResponse()), 100)));
    } finally {
      // A polite farewell could wait for the server: closing the socket is enough.
      Sockets.close(socket);
      Sockets.close(transport);
    }
  }

  private Address[] remaining(Letter letter, MimeMessage message) throws MessagingException {
    Set<Address> done = served.getOrDefault(letter.id(), Set.of());
    return Arrays.stream(message.getAllRecipients())
        .filter(address -> !done.contains(address))
        .toArray(Address[]::new);
  }

  private Socket connected(LimitedSocket socket) throws IOException {
    if (closed) {
      throw new IOException("the service is stopping");
    }
    InetAddress address = InetAddress.getByName(route.server());
    // Under the name it was asked for: certificates are for names.
    InetAddress named = InetAddress.getByAddress(route.server(), address.getAddress());
    socket.connect(new InetSocketAddress(named, route.port()), (int) limits.connect().toMillis());
    socket.setSoTimeout((int) limits.answer().toMillis());
    if (route.security() != Security.TLS) {
      return socket;
    }
    SSLSocket tls = (SSLSocket) factory().createSocket(socket, route.server(), route.port(), true);
    SSLParameters parameters = tls.getSSLParameters();
    parameters.setEndpointIdentificationAlgorithm("HTTPS");
    tls.setSSLParameters(parameters);
    tls.startHandshake();
    return tls;
  }

  private SSLSocketFactory factory() throws IOException {
    SSLContext context = Trust.context(route.caFile().map(Path::of));
    return context.getSocketFactory();
  }

  private Session session() throws IOException {
    Properties properties = new Properties();
    properties.setProperty("mail.smtp.host", route.server());
    properties.setProperty("mail.smtp.quitwait", "false");
    properties.setProperty("mail.smtp.sendpartial", "true");
    if (route.security() == Security.STARTTLS) {
      properties.setProperty("mail.smtp.starttls.required", "true");
      properties.setProperty("mail.smtp.ssl.checkserveridentity", "true");
      properties.put("mail.smtp.ssl.socketFactory", factory());
    }
    if (route.login().isEmpty()) {
      return Session.getInstance(properties);
    }
    Login login = route.login().get();
    String password;
    try {
      password = SecretFile.read(Path.of(login.passwordFile()), 1);
    } catch (IOException e) {
      throw new SecretException(e);
    }
    properties.setProperty("mail.smtp.auth", "true");
    properties.setProperty("mail.smtp.user", login.user());
    return Session.getInstance(
        properties,
        new Authenticator() {
          @Override
          protected PasswordAuthentication getPasswordAuthentication() {
            return new PasswordAuthentication(login.user(), password);
          }
        });
  }

  /** The password can't be had. */
  private static final class SecretException extends IOException {
    SecretException(IOException why) {
      super(why.getMessage(), why);
    }
  }

  /** Closes the socket of an attempt when its time is up. */
  private final class Clockwork {
    private volatile boolean rang;
    private @Nullable ScheduledFuture<?> alarm;

    void start(Socket socket) {
      alarm =
          deadlines.schedule(
              () -> {
                rang = true;
                Sockets.close(socket);
              },
              limits.whole().toMillis(),
              TimeUnit.MILLISECONDS);
    }

    void stop() {
      if (alarm != null) {
        alarm.cancel(false);
      }
    }
  }
}
