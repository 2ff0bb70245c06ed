package feedwitness.publish;

import java.util.Map;
import org.eclipse.jetty.http.HttpFields;

/** Headers that every answer carries, errors and files as well. */
final class SafetyHeaders {
  static final Map<String, String> ALL =
      Map.of(
          "Content-Security-Policy",
          "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
              + " connect-src 'self'; font-src 'self'; manifest-src 'self'; base-uri 'none';"
              + " form-action 'none'; frame-ancestors 'none'",
          "X-Content-Type-Options",
          "nosniff",
          "Referrer-Policy",
          "no-referrer",
          "Cross-Origin-Resource-Policy",
          "same-origin");

  private SafetyHeaders() {}

  static void put(HttpFields.Mutable headers) {
    ALL.forEach(headers::put);
  }
}
