package feedwitness.publish;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.http.Context;
import java.io.IOException;

/** The body of a request, read once and never beyond its limit, stated length or not. */
final class Body {
  static final int LIMIT_OCTETS = 64 * 1024;
  private static final String ATTRIBUTE = "feedwitness.body";

  private Body() {}

  /**
   * Reads the body off the wire.
   *
   * @throws ProblemException status 413 if it is longer than {@link #LIMIT_OCTETS}
   */
  static void receive(Context context) throws IOException {
    if (context.req().getContentLengthLong() > LIMIT_OCTETS) {
      throw tooLong();
    }
    byte[] body = context.req().getInputStream().readNBytes(LIMIT_OCTETS + 1);
    if (body.length > LIMIT_OCTETS) {
      throw tooLong();
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

  private static ProblemException tooLong() {
    return Problem.of(413, "the body is longer than the limit of %d octets".formatted(LIMIT_OCTETS))
        .exception();
  }
}
