package feedwitness.publish;

import feedwitness.publish.access.AccessSettings;
import java.time.Duration;

/**
 * The cookie a paired browser keeps. No script sees it, no other site makes the browser send it,
 * and over TLS it goes nowhere else.
 */
final class TokenCookie {
  /** Browsers keep none for longer. */
  private static final Duration LIFE = Duration.ofDays(400);

  private static final String NAME = "feedwitness-device";

  private TokenCookie() {}

  /** The prefix makes browsers insist on Secure, path / and no domain (RFC 6265bis §4.1.3.2). */
  static String name(AccessSettings settings) {
    return settings.secure() ? "__Host-" + NAME : NAME;
  }

  static String set(AccessSettings settings, String token) {
    return text(settings, token, LIFE.toSeconds());
  }

  static String forget(AccessSettings settings) {
    return text(settings, "", 0);
  }

  private static String text(AccessSettings settings, String value, long seconds) {
    return "%s=%s; Path=/; Max-Age=%d; HttpOnly; SameSite=Strict%s"
        .formatted(name(settings), value, seconds, settings.secure() ? "; Secure" : "");
  }
}
