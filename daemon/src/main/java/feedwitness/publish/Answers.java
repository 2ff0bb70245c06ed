package feedwitness.publish;

import io.javalin.http.Context;

/** Writes what went well. */
final class Answers {
  private Answers() {}

  static void json(Context context, Object value) {
    context.header("Cache-Control", "no-store");
    write(context, Json.MEDIA_TYPE, Json.bytes(value));
  }

  static void write(Context context, String mediaType, byte[] content) {
    type(context, mediaType);
    context.result(content);
  }

  /** The library adds a charset to every type, JSON and pictures too, unless it is taken away. */
  static void type(Context context, String mediaType) {
    context.res().setCharacterEncoding(null);
    context.contentType(mediaType);
  }
}
