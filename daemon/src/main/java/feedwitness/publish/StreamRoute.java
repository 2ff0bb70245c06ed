package feedwitness.publish;

import feedwitness.publish.access.Access;
import feedwitness.publish.access.Caller;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.function.BooleanSupplier;
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
  private final Access access;

  StreamRoute(Streams streams, Access access) {
    this.streams = streams;
    this.access = access;
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
    announce(context);
    context.future(() -> begin(context));
  }

  /** The library ends the answer when the future is complete, and not before. */
  private CompletableFuture<Void> begin(Context context) {
    CompletableFuture<Void> done = new CompletableFuture<>();
    Caller caller = Callers.of(context);
    streams.open(
        new ServletWire(context.res(), endPoint(context), done, () -> access.admits(caller)),
        context.header("Last-Event-ID"));
    return done;
  }

  private static void announce(Context context) {
    context.header("Cache-Control", "no-store");
    Answers.type(context, MEDIA_TYPE);
  }

  private static boolean accepts(@Nullable String accept) {
    if (accept == null || accept.isBlank()) {
      return true;
    }
    String ranges = accept.toLowerCase(Locale.ROOT);
    return ranges.contains(MEDIA_TYPE) || ranges.contains("text/*") || ranges.contains("*/*");
  }

  /** The connection of a request, to be cut where an answer cannot be finished. */
  static EndPoint endPoint(Context context) {
    return ServletContextRequest.getServletContextRequest(context.req())
        .getConnectionMetaData()
        .getConnection()
        .getEndPoint();
  }

  /** A stream as the answer to a request that is kept open. */
  private record ServletWire(
      HttpServletResponse response,
      EndPoint endPoint,
      CompletableFuture<Void> done,
      BooleanSupplier stillLetIn)
      implements EventStream.Wire {
    @Override
    public OutputStream output() throws IOException {
      return response.getOutputStream();
    }

    @Override
    public boolean admitted() {
      return stillLetIn.getAsBoolean();
    }

    @Override
    public void complete() {
      done.complete(null);
    }

    @Override
    public void abort() {
      endPoint.close();
    }
  }
}
