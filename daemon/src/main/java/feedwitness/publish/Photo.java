package feedwitness.publish;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.ledger.Attachment;
import feedwitness.quantity.Octets;
import java.util.Arrays;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A picture sent within a note. Only kinds every browser shows, and only if it is what it says. */
final class Photo {
  /** Base64 makes 4 characters of 3 octets. */
  private static final int LONGEST_BASE64 = (Attachment.LIMIT_OCTETS + 2) / 3 * 4;

  private Photo() {}

  /** Empty if there is none; faults are gathered in {@code fields} under {@code photo}. */
  static Optional<Attachment> read(BodyFields fields) {
    JsonNode photo = fields.optionalObject("photo");
    if (photo == null) {
      return Optional.empty();
    }
    String type = photo.path("media_type").asText();
    String base64 = photo.path("base64").asText();
    String problem = problem(photo, type, base64);
    if (problem == null) {
      try {
        byte[] octets = Base64.getDecoder().decode(base64);
        if (Kind.of(octets).filter(kind -> kind.type.equals(type)).isPresent()) {
          return Optional.of(new Attachment(type, Octets.of(octets)));
        }
        problem = "photo is no %s; send the picture as the camera made it".formatted(type);
      } catch (IllegalArgumentException e) {
        problem = "photo: base64 is damaged; send the picture again";
      }
    }
    fields.fault("photo", problem);
    return Optional.empty();
  }

  private static @Nullable String problem(JsonNode photo, String type, String base64) {
    if (photo.size() != 2 || type.isEmpty() || base64.isEmpty()) {
      return "photo needs media_type and base64, and nothing else";
    }
    if (!Kind.TYPES.containsKey(type)) {
      return "photo: media_type %s is not one of %s"
          .formatted(Quoted.of(type), String.join(", ", Kind.TYPES.keySet()));
    }
    return base64.length() > LONGEST_BASE64
        ? "photo is larger than %d octets; send a smaller picture"
            .formatted(Attachment.LIMIT_OCTETS)
        : null;
  }

  /** Kinds of pictures by their first octets. */
  private enum Kind {
    JPEG("image/jpeg"),
    PNG("image/png"),
    WEBP("image/webp");

    private static final Map<String, Kind> TYPES = new LinkedHashMap<>();

    static {
      for (Kind kind : values()) {
        TYPES.put(kind.type, kind);
      }
    }

    private final String type;

    Kind(String type) {
      this.type = type;
    }

    private static Optional<Kind> of(byte[] octets) {
      if (starts(octets, 0, 0xFF, 0xD8, 0xFF)) {
        return Optional.of(JPEG);
      }
      if (starts(octets, 0, 0x89, 'P', 'N', 'G', 0x0D, 0x0A, 0x1A, 0x0A)) {
        return Optional.of(PNG);
      }
      return starts(octets, 0, 'R', 'I', 'F', 'F') && starts(octets, 8, 'W', 'E', 'B', 'P')
          ? Optional.of(WEBP)
          : Optional.empty();
    }

    private static boolean starts(byte[] octets, int at, int... wanted) {
      if (octets.length < at + wanted.length) {
        return false;
      }
      int[] there = new int[wanted.length];
      for (int i = 0; i < wanted.length; i++) {
        there[i] = octets[at + i] & 0xFF;
      }
      return Arrays.equals(there, wanted);
    }
  }
}
