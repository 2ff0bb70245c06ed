package feedwitness.publish;

import io.javalin.http.Context;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.ByteBuffer;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.tinylog.Logger;

/** Writes a problem as the answer, on either side of the servlet border. */
final class ProblemAnswers {
  private ProblemAnswers() {}

  static void write(Response response, Callback callback, Problem problem) {
    byte[] body = Json.bytes(problem);
    response.setStatus(problem.status());
    SafetyHeaders.put(response.getHeaders());
    response.getHeaders().put(HttpHeader.CONTENT_TYPE, Problem.MEDIA_TYPE);
    response.getHeaders().put(HttpHeader.CACHE_CONTROL, "no-store");
    response.getHeaders().put(HttpHeader.CONTENT_LENGTH, body.length);
    response.write(true, ByteBuffer.wrap(body), callback);
  }

  /** Where the library's context is no more; a client that went away is left alone. */
  static void write(HttpServletResponse response, Problem problem) {
    response.setStatus(problem.status());
    response.setCharacterEncoding(null);
    response.setContentType(Problem.MEDIA_TYPE);
    response.setHeader("Cache-Control", "no-store");
    try {
      response.getOutputStream().write(Json.bytes(problem));
    } catch (IOException e) {
      Logger.debug(e, "client went away before its problem was written");
    }
  }

  static void write(Context context, Problem problem) {
    context.status(problem.status());
    context.header("Cache-Control", "no-store");
    Answers.write(context, Problem.MEDIA_TYPE, Json.bytes(problem));
  }
}
