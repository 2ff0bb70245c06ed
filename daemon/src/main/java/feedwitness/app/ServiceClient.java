package feedwitness.app;

import feedwitness.publish.ExplanationText;
import feedwitness.publish.access.Passport;
import java.io.IOException;
import java.net.ConnectException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;

/** Asks a running service. */
final class ServiceClient {
  private static final Duration PATIENCE = Duration.ofSeconds(20);

  private final URI base;
  private final Passport passport;

  /** {@code base} is the address of the page. */
  ServiceClient(URI base, Passport passport) {
    this.base = base.getPath().endsWith("/") ? base : URI.create(base + "/");
    this.passport = passport;
  }

  /** What came back. */
  sealed interface Answer {
    record Given(String body) implements Answer {}

    record Refused(String message) implements Answer {}

    /** Nobody listens there. */
    record Nobody(String message) implements Answer {}
  }

  Answer get(String path) {
    HttpRequest request =
        passport
            .sign(HttpRequest.newBuilder(base.resolve(path)))
            .timeout(PATIENCE)
            .header("Accept", "application/json, application/problem+json")
            .build();
    try {
      HttpClient http =
          passport
              .equip(HttpClient.newBuilder())
              .connectTimeout(PATIENCE)
              .version(HttpClient.Version.HTTP_1_1)
              .build();
      HttpResponse<String> response = http.send(request, HttpResponse.BodyHandlers.ofString());
      return response.statusCode() == 200
          ? new Answer.Given(response.body())
          : new Answer.Refused(refusal(response));
    } catch (ConnectException e) {
      return new Answer.Nobody("no service answers at %s".formatted(base));
    } catch (IOException e) {
      return new Answer.Refused("%s does not answer as it should (%s)".formatted(base, e));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return new Answer.Refused("interrupted");
    }
  }

  private String refusal(HttpResponse<String> response) {
    try {
      return ExplanationText.problem(response.body());
    } catch (IllegalArgumentException e) {
      return "%s answers with status %d; is a Feedwitness of this version there?"
          .formatted(base, response.statusCode());
    }
  }
}
