package feedwitness.settings;

import feedwitness.site.Urgency;
import feedwitness.site.WebhookRoute;
import feedwitness.site.WebhookRoute.Reach;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Reads one {@code [[webhook]]}. */
final class WebhookReader {
  static final Set<String> KEYS = Set.of("name", "url", "secret-file", "reach", "least", "ca-file");

  private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9-]{0,31}");
  private static final String EXAMPLE = "for example url = \"https://hooks.example.org/feed\"";

  private WebhookReader() {}

  static Optional<WebhookRoute> read(Section hook, List<String> notes) {
    hook.missing("name", "give the webhook a short name, for example name = \"desk\"");
    hook.missing("url", EXAMPLE);
    hook.missing("secret-file", "name the file with the secret that signs what is sent");
    Optional<String> name =
        hook.parsed("name", WebhookReader::name, "use 1 to 32 lower-case letters, digits and -");
    Optional<Reach> reach =
        hook.has("reach") ? hook.choice("reach", reaches()) : Optional.of(Reach.PUBLIC);
    Optional<String> url =
        hook.parsed("url", text -> url(text, reach.orElse(Reach.PRIVATE)), EXAMPLE);
    Optional<String> secret = SecretPaths.secret(hook, "secret-file", notes);
    Optional<Urgency> least = MessagesReader.least(hook);
    Optional<Optional<String>> ca = SecretPaths.optional(hook, "ca-file");
    if (name.isEmpty()
        || url.isEmpty()
        || secret.isEmpty()
        || reach.isEmpty()
        || least.isEmpty()
        || ca.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new WebhookRoute(name.get(), url.get(), secret.get(), reach.get(), least.get(), ca.get()));
  }

  private static String name(String text) {
    if (!NAME.matcher(text).matches()) {
      throw new IllegalArgumentException(
          "'%s' is not 1 to 32 of a-z, 0-9 and -, a letter first".formatted(text));
    }
    return text;
  }

  private static Map<String, Reach> reaches() {
    Map<String, Reach> words = new LinkedHashMap<>();
    for (Reach each : Reach.values()) {
      words.put(each.name().toLowerCase(Locale.ROOT).replace('_', '-'), each);
    }
    return words;
  }

  /** The text is not repeated in messages beyond its host: it may hold a key of the receiver's. */
  private static String url(String text, Reach reach) {
    URI url;
    try {
      url = new URI(text);
    } catch (URISyntaxException e) {
      throw new IllegalArgumentException("is no address (%s)".formatted(e.getReason()), e);
    }
    boolean https = "https".equalsIgnoreCase(url.getScheme());
    if (!https && !"http".equalsIgnoreCase(url.getScheme())) {
      throw new IllegalArgumentException("does not begin with https://");
    }
    if (url.getHost() == null) {
      throw new IllegalArgumentException("names no machine after https://");
    }
    if (url.getRawUserInfo() != null || url.getRawFragment() != null) {
      throw new IllegalArgumentException(
          "has a user, a password or a part after #; leave them out, the signature proves who"
              + " sends");
    }
    if (!https && reach == Reach.PUBLIC) {
      throw new IllegalArgumentException(
          "begins with http://, so all on the way could read it; write https://, or set reach if"
              + " the receiver is in your own network");
    }
    return text;
  }
}
