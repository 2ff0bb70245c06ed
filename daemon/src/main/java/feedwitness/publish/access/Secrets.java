package feedwitness.publish.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;

/** Makes what cannot be guessed, and compares without telling by its time how much was right. */
final class Secrets {
  private static final int TOKEN_OCTETS = 32;
  private static final int ID_OCTETS = 4;
  private static final int CODES = 100_000_000;

  private final SecureRandom random = new SecureRandom();

  /** 256 bits as 43 characters of a-z, A-Z, 0-9, - and _. */
  String token() {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(octets(TOKEN_OCTETS));
  }

  /** 8 digits: short enough to type in wet gloves, too many to try at the pace that is let. */
  String code() {
    return "%08d".formatted(random.nextInt(CODES));
  }

  String id() {
    return HexFormat.of().formatHex(octets(ID_OCTETS));
  }

  private byte[] octets(int count) {
    byte[] octets = new byte[count];
    random.nextBytes(octets);
    return octets;
  }

  /** 64 hexadecimal digits. */
  static String sha256(String text) {
    try {
      return HexFormat.of()
          .formatHex(
              MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  static boolean same(String one, String other) {
    return MessageDigest.isEqual(
        one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
  }
}
