package feedwitness.publish;

import feedwitness.quantity.Octets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * One file of the page.
 *
 * @param tag strong entity tag, from the content
 */
record PageFile(String mediaType, Octets content, String tag) {
  private static final int TAG_OCTETS = 12;

  static PageFile of(String mediaType, byte[] content) {
    try {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(content);
      String tag = '"' + HexFormat.of().formatHex(digest, 0, TAG_OCTETS) + '"';
      return new PageFile(mediaType, Octets.of(content), tag);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
