package feedwitness.publish;

import io.javalin.http.Context;

/** Writes what went well. */
final class Answers {
  private Answers() {}

  static void json(Context context, Object value) {
    context.header("Cache-Control", "no-store");
    context.contentType(Json.MEDIA_TYPE).result(Json.bytes(value));
  }
}
