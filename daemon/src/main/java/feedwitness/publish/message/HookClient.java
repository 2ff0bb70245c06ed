package feedwitness.publish.message;

import feedwitness.site.WebhookRoute;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.eclipse.jetty.client.HttpClient;
import org.eclipse.jetty.http.HttpCookieStore;
import org.eclipse.jetty.util.Promise;
import org.eclipse.jetty.util.SocketAddressResolver;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.tinylog.Logger;

/**
 * An HTTP client for one attempt. Messages are rare: threads that wait for the next would cost more
 * than making them anew.
 */
final class HookClient implements AutoCloseable {
  private static final int MOST_THREADS = 8;
  private static final long STOP_MILLIS = 1_000;

  private final HttpClient jetty = new HttpClient();

  /**
   * Starts it.
   *
   * @param ways the only addresses it connects to, whatever the name resolves to meanwhile
   */
  HookClient(WebhookRoute route, Limits limits, List<InetSocketAddress> ways) throws IOException {
    SslContextFactory.Client tls = new SslContextFactory.Client();
    tls.setSslContext(Trust.context(route.caFile().map(Path::of)));
    tls.setEndpointIdentificationAlgorithm("HTTPS");
    QueuedThreadPool threads = new QueuedThreadPool(MOST_THREADS, 1);
    threads.setName("webhook");
    threads.setDaemon(true);
    threads.setStopTimeout(STOP_MILLIS);
    jetty.setExecutor(threads);
    jetty.setSslContextFactory(tls);
    jetty.setFollowRedirects(false);
    jetty.setHttpCookieStore(new HttpCookieStore.Empty());
    jetty.setConnectTimeout(limits.connect().toMillis());
    jetty.setIdleTimeout(limits.answer().toMillis());
    jetty.setSocketAddressResolver(
        new SocketAddressResolver() {
          @Override
          public void resolve(
              String host,
              int port,
              Map<String, Object> context,
              Promise<List<InetSocketAddress>> promise) {
            promise.succeeded(ways);
          }
        });
    try {
      jetty.start();
    } catch (Exception e) {
      close();
      throw new IOException("cannot send: " + e.getMessage(), e);
    }
  }

  HttpClient jetty() {
    return jetty;
  }

  @Override
  public void close() {
    try {
      jetty.stop();
    } catch (Exception e) {
      Logger.warn("webhook client: {}", String.valueOf(e.getMessage()));
    }
  }
}
