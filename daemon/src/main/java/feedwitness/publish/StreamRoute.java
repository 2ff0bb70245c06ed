package feedwitness.publish;

import io.javalin.http.Context;
import io.javalin.http.Handler;
import jakarta.servlet.AsyncContext;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.io.EndPoint;
import org.jspecify.annotations.Nullable;

/**
 * Opens an event stream. The library's own handler is not used: without an Accept header it answers
 * an empty 200, and it writes on the caller's thread.
 */
final class StreamRoute implements Handler {
  private static final String MEDIA_TYPE = "text/event-stream";

  private final Streams streams;

  StreamRoute(Streams streams) {
    this.streams = streams;
  }

  @Override
  public void handle(Context context) {
    if (!accepts(context.header("Accept"))) {
      throw Problem.of(
              406,
              "this address answers with %s only; ask with Accept: %s"
                  .formatted(MEDIA_TYPE, MEDIA_TYPE))
          .exception();
    }
    if (context.req().getMethod().equals("HEAD")) {
      announce(context);
      return;
    }
    streams.open(
        () -> {
          announce(context);
          AsyncContext async = context.req().startAsync();
          async.setTimeout(0);
          return new ServletWire(async, endPoint(context));
        });
  }

  private static void announce(Context context) {
    context.header("Cache-Control", "no-store");
    context.contentType(MEDIA_TYPE);
  }

  private static boolean accepts(@Nullable String accept) {
    if (accept == null || accept.isBlank()) {
      return true;
    }
    String ranges = accept.toLowerCase(Locale.ROOT);
    return ranges.contains(MEDIA_TYPE) || ranges.contains("text/*") || ranges.contains("*/*");
  }

  private static EndPoint endPoint(Context context) {
    return ServletContextRequest.getServletContextRequest(context.req())
        .getConnectionMetaData()
        .getConnection()
        .getEndPoint();
  }

  /** A stream over a request that was made asynchronous. */
  private record ServletWire(AsyncContext async, EndPoint endPoint) implements EventStream.Wire {
    @Override
    public OutputStream output() throws IOException {
      return async.getResponse().getOutputStream();
    }

    @Override
    public void complete() {
      try {
        async.complete();
      } catch (IllegalStateException e) {
        // The server had completed it when the connection broke.
        endPoint.close();
      }
    }

    @Override
    public void abort() {
      endPoint.close();
    }
  }
}
