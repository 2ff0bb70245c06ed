package feedwitness.publish;

import io.javalin.config.RouterConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import io.javalin.http.MethodNotAllowedResponse;
import io.javalin.router.Endpoint;
import io.javalin.router.ParsedEndpoint;
import java.util.List;
import java.util.stream.Collectors;
import org.eclipse.jetty.io.EofException;
import org.tinylog.Logger;

/** Turns whatever ends a request early into a problem. */
final class Failures {
  /** Says nothing of the inside; that stands in the log. */
  static final Problem UNEXPECTED =
      Problem.of(500, "the service failed on this request; its log says why");

  private final List<ParsedEndpoint> endpoints;

  Failures(List<Endpoint> endpoints, RouterConfig router) {
    this.endpoints = endpoints.stream().map(each -> new ParsedEndpoint(each, router)).toList();
  }

  void register(RoutesConfig routes) {
    routes.exception(
        ProblemException.class, (e, context) -> ProblemAnswers.write(context, e.problem()));
    routes.exception(MethodNotAllowedResponse.class, this::methodNotAllowed);
    routes.exception(HttpResponseException.class, Failures::refused);
    routes.exception(EofException.class, (e, context) -> Logger.debug("client went away: {}", e));
    routes.exception(Exception.class, Failures::unexpected);
  }

  private void methodNotAllowed(MethodNotAllowedResponse e, Context context) {
    String methods =
        endpoints.stream()
            .filter(each -> each.matches(context.path()))
            .map(each -> each.endpoint.method)
            .map(each -> each.equals(HandlerType.GET) ? "GET, HEAD" : each.name())
            .collect(Collectors.joining(", "));
    context.header("Allow", methods);
    ProblemAnswers.write(
        context,
        Problem.of(
            405,
            "%s is not possible at %s; possible: %s"
                .formatted(context.method(), Quoted.of(context.path()), methods)));
  }

  private static void refused(HttpResponseException e, Context context) {
    String detail =
        e.getStatus() == 404
            ? "there is nothing at %s".formatted(Quoted.of(context.path()))
            : Quoted.plain(String.valueOf(e.getMessage()));
    ProblemAnswers.write(context, Problem.of(e.getStatus(), detail));
  }

  private static void unexpected(Exception e, Context context) {
    Logger.error(e, "{} {} failed", context.method(), Quoted.of(context.path()));
    ProblemAnswers.write(context, UNEXPECTED);
  }
}
