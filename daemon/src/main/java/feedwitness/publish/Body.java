package feedwitness.publish;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.http.Context;
import java.io.IOException;

/** The body of a request, read once and never beyond its limit, stated length or not. */
final class Body {
  static final int LIMIT_OCTETS = 64 * 1024;

  /** For a note with a picture of a million octets in base64, and its text. */
  static final int LARGE_OCTETS = 1_400_000;

  private static final String ATTRIBUTE = "feedwitness.body";

  private Body() {}

  /**
   * Reads the body off the wire.
   *
   * @throws ProblemException status 413 if it is longer than {@code limit} octets
   */
  static void receive(Context context, int limit) throws IOException {
    if (context.req().getContentLengthLong() > limit) {
      throw tooLong(limit);
    }
    byte[] body = context.req().getInputStream().readNBytes(limit + 1);
    if (body.length > limit) {
      throw tooLong(limit);
    }
    context.attribute(ATTRIBUTE, body);
  }

  /**
   * The received body as a JSON object.
   *
   * @throws ProblemException status 400 if it is none
   */
  static JsonNode object(Context context) {
    byte[] body = context.attribute(ATTRIBUTE);
    return Json.object(body == null ? new byte[0] : body);
  }

  private static ProblemException tooLong(int limit) {
    return Problem.of(413, "the body is longer than the limit of %d octets".formatted(limit))
        .exception();
  }
}
