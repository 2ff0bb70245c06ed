package feedwitness.publish;

import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;

/** Answers what the HTTP server refuses by itself, before any of our handlers saw the request. */
final class JettyErrors implements Request.Handler {

  @Override
  public boolean handle(Request request, Response response, Callback callback) {
    int status = response.getStatus() >= 400 ? response.getStatus() : 500;
    ProblemAnswers.write(response, callback, Problem.of(status, detail(request, status)));
    return true;
  }

  private static String detail(Request request, int status) {
    Object reason = request.getAttribute(ErrorHandler.ERROR_MESSAGE);
    if (status < 500 && reason instanceof String words && !words.isBlank()) {
      return "the request could not be understood: " + Quoted.plain(words);
    }
    return switch (status) {
      case 404 -> "there is nothing at this address";
      case 503 -> "the service is stopping or overloaded; try again in a few seconds";
      default ->
          status < 500
              ? "the request could not be understood"
              : "the service failed on this request; its log says why";
    };
  }
}
