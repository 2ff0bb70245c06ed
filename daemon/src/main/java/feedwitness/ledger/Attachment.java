package feedwitness.ledger;

import feedwitness.quantity.Octets;

/**
 * A picture or page that belongs to a piece of evidence.
 *
 * @param mediaType such as {@code image/jpeg}
 * @param octets at most {@link #LIMIT_OCTETS}
 */
public record Attachment(String mediaType, Octets octets) {
  /** A photo of a phone, scaled down for a screen, stays well below. */
  public static final int LIMIT_OCTETS = 1_000_000;

  private static final int MEDIA_TYPE_LIMIT = 64;

  public Attachment {
    if (!mediaType.matches("[a-z]+/[a-z0-9.+-]+") || mediaType.length() > MEDIA_TYPE_LIMIT) {
      throw new IllegalArgumentException("'%s' is no media type".formatted(mediaType));
    }
    if (octets.length() > LIMIT_OCTETS) {
      throw new IllegalArgumentException(
          "attachment of %d octets is above %d; send a smaller picture"
              .formatted(octets.length(), LIMIT_OCTETS));
    }
  }
}
