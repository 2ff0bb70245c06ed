package feedwitness.settings;

import feedwitness.site.MailRoute;
import feedwitness.site.MailRoute.Login;
import feedwitness.site.MailRoute.Security;
import feedwitness.site.Urgency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Reads {@code [mail]}. */
final class MailReader {
  static final Set<String> KEYS =
      Set.of(
          "server",
          "port",
          "security",
          "user",
          "password-file",
          "from",
          "to",
          "escalate-to",
          "least",
          "ca-file");

  private static final int MOST_RECIPIENTS = 20;
  private static final int LONGEST_USER = 200;
  private static final Pattern SERVER = Pattern.compile("[0-9A-Za-z.:-]{1,253}");
  private static final Pattern ADDRESS =
      Pattern.compile("[0-9A-Za-z.!#$%&'*+/=?^_`{|}~-]{1,64}@[0-9A-Za-z.-]{1,189}");

  private MailReader() {}

  static Optional<MailRoute> read(Section mail, List<String> notes) {
    mail.missing("server", "write the name of your provider's server for outgoing mail");
    mail.missing("from", "write the address messages come from");
    mail.missing("to", "write who gets messages, for example to = [\"grower@example.org\"]");
    Optional<String> server =
        mail.parsed("server", MailReader::server, "for example server = \"mail.example.org\"");
    Optional<Security> security =
        mail.has("security")
            ? mail.choice("security", securities())
            : Optional.of(Security.STARTTLS);
    Optional<Integer> port =
        mail.has("port") ? mail.whole("port", 1, 65_535) : security.map(MailReader::usualPort);
    Optional<String> from =
        mail.parsed("from", MailReader::address, "for example from = \"feed@example.org\"");
    Optional<List<String>> to = addresses(mail, "to");
    Optional<List<String>> escalateTo =
        mail.has("escalate-to") ? addresses(mail, "escalate-to") : Optional.of(List.of());
    Optional<Urgency> least = MessagesReader.least(mail);
    Optional<Optional<Login>> login = login(mail, security, notes);
    Optional<Optional<String>> ca = SecretPaths.optional(mail, "ca-file");
    if (server.isEmpty()
        || port.isEmpty()
        || security.isEmpty()
        || login.isEmpty()
        || from.isEmpty()
        || to.isEmpty()
        || escalateTo.isEmpty()
        || least.isEmpty()
        || ca.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new MailRoute(
            server.get(),
            port.get(),
            security.get(),
            login.get(),
            from.get(),
            to.get(),
            escalateTo.get(),
            least.get(),
            ca.get()));
  }

  private static Map<String, Security> securities() {
    Map<String, Security> words = new LinkedHashMap<>();
    words.put("starttls", Security.STARTTLS);
    words.put("tls", Security.TLS);
    words.put("none", Security.NONE);
    return words;
  }

  private static int usualPort(Security security) {
    return switch (security) {
      case STARTTLS -> 587;
      case TLS -> 465;
      case NONE -> 25;
    };
  }

  private static String server(String text) {
    if (!SERVER.matcher(text).matches()) {
      throw new IllegalArgumentException("'%s' is no name of a machine".formatted(text));
    }
    return text;
  }

  private static String address(String text) {
    if (!ADDRESS.matcher(text).matches()) {
      throw new IllegalArgumentException(
          "'%s' is no plain mail address; write name@example.org, without a display name"
              .formatted(text));
    }
    return text;
  }

  private static Optional<List<String>> addresses(Section mail, String key) {
    return mail.texts(key, 1, MOST_RECIPIENTS)
        .flatMap(
            texts -> {
              List<String> good =
                  texts.stream()
                      .flatMap(text -> mail.entry(key, text, MailReader::address).stream())
                      .toList();
              return good.size() == texts.size() ? Optional.of(good) : Optional.empty();
            });
  }

  /** Empty if it is faulty; within, empty if there is none. */
  private static Optional<Optional<Login>> login(
      Section mail, Optional<Security> security, List<String> notes) {
    if (!mail.has("user") && !mail.has("password-file")) {
      return Optional.of(Optional.empty());
    }
    mail.missing("user", "write the user name the server knows, or leave out password-file");
    mail.missing("password-file", "name the file with the password; it never stands here itself");
    if (security.equals(Optional.of(Security.NONE))) {
      mail.problem(
          "security",
          "security none would send the password for all to read",
          "write security = \"starttls\" or \"tls\", or leave out user and password-file");
      return Optional.empty();
    }
    Optional<String> user = ConfigReader.line(mail, "user", LONGEST_USER);
    Optional<String> file = SecretPaths.secret(mail, "password-file", notes);
    return user.isEmpty() || file.isEmpty()
        ? Optional.empty()
        : Optional.of(Optional.of(new Login(user.get(), file.get())));
  }
}
