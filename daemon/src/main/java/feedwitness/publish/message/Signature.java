package feedwitness.publish.message;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.HexFormat;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Signs what a webhook sends: HMAC-SHA256 (RFC 2104) over {@code id.timestamp.body}. The timestamp
 * keeps an old request from being sent again later, the id within those minutes; neither can be
 * exchanged without breaking the signature.
 */
final class Signature {
  static final String ID = "Idempotency-Key";
  static final String TIMESTAMP = "Feedwitness-Timestamp";
  static final String SIGNATURE = "Feedwitness-Signature";

  private static final String ALGORITHM = "HmacSHA256";
  private static final String VERSION = "v1=";

  private Signature() {}

  /**
   * Value of the header {@link #SIGNATURE}.
   *
   * @param seconds since 1970 UTC, as in the header {@link #TIMESTAMP}
   */
  static String of(String secret, String id, long seconds, byte[] body) {
    try {
      Mac mac = Mac.getInstance(ALGORITHM);
      mac.init(new SecretKeySpec(secret.getBytes(StandardCharsets.UTF_8), ALGORITHM));
      mac.update((id + "." + seconds + ".").getBytes(StandardCharsets.UTF_8));
      return VERSION + HexFormat.of().formatHex(mac.doFinal(body));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java has " + ALGORITHM, e);
    }
  }
}
