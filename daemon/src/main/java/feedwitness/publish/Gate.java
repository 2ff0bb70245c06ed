package feedwitness.publish;

import feedwitness.publish.access.AccessSettings;
import java.net.InetAddress;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.jspecify.annotations.Nullable;

/**
 * Stands before everything else. A page of a stranger, open in the grower's browser, can send
 * requests to this machine: a name of its own that resolves to 127.0.0.1 shows in {@code Host}, a
 * form or script shows in {@code Origin}. Both are refused here, also for files and errors.
 */
final class Gate extends Handler.Wrapper {
  private static final Set<String> SAFE_METHODS = Set.of("GET", "HEAD", "OPTIONS", "TRACE");

  private final Hosts hosts;
  private final String scheme;
  private final String example;

  Gate(AccessSettings settings) {
    this.hosts = new Hosts(settings);
    this.scheme = settings.scheme();
    this.example =
        settings.names().isEmpty()
            ? settings.scheme() + "://localhost with the same port"
            : settings.scheme() + "://" + settings.names().get(0);
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    SafetyHeaders.put(response.getHeaders());
    Optional<Problem> refusal = refusal(request);
    if (refusal.isPresent()) {
      ProblemAnswers.write(response, callback, refusal.get());
      return true;
    }
    return super.handle(request, response, callback);
  }

  private Optional<Problem> refusal(Request request) {
    String host = request.getHeaders().get(HttpHeader.HOST);
    String named = request.getHttpURI().getHost();
    InetAddress here = Callers.arrival(request).here();
    if (host == null
        || !hosts.allowed(Hosts.withoutPort(host), here)
        || (named != null && !hosts.allowed(named, here))) {
      return Optional.of(
          Problem.of(
              421,
              "this service does not answer to the name %s; open it as %s"
                  .formatted(Quoted.of(host == null ? "" : host), example)));
    }
    if (SAFE_METHODS.contains(request.getMethod())) {
      return Optional.empty();
    }
    String origin = request.getHeaders().get(HttpHeader.ORIGIN);
    if (origin != null && !origin.equalsIgnoreCase(scheme + "://" + host)) {
      return Optional.of(
          Problem.of(
              403,
              "a page from %s may not change anything here; use the page of this service"
                  .formatted(Quoted.of(origin))));
    }
    return mediaTypeRefusal(request.getHeaders().get(HttpHeader.CONTENT_TYPE));
  }

  private static Optional<Problem> mediaTypeRefusal(@Nullable String contentType) {
    String sent = contentType == null ? "" : contentType;
    String mediaType = sent.split(";", 2)[0].strip().toLowerCase(Locale.ROOT);
    return mediaType.equals(Json.MEDIA_TYPE)
        ? Optional.empty()
        : Optional.of(
            Problem.of(
                415,
                "the body is %s; send it with Content-Type: application/json"
                    .formatted(sent.isBlank() ? "of no stated type" : Quoted.of(sent))));
  }
}
