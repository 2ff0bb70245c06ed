package feedwitness.publish.message;

import feedwitness.quantity.TimeSource;
import feedwitness.site.Urgency;
import feedwitness.site.WebhookRoute;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.SocketTimeoutException;
import java.net.URI;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.client.BytesRequestContent;
import org.eclipse.jetty.client.Request;
import org.eclipse.jetty.http.HttpMethod;
import org.jspecify.annotations.Nullable;

/**
 * Sends signed HTTP requests. The name is resolved once for an attempt, the addresses are judged,
 * and the connection is made to one of those; redirects are not followed. As soon as the receiver
 * has stated a status, all is said: what else it sends is not read.
 */
final class WebhookChannel implements Channel {
  static final int LEAST_SECRET = 24;

  private final WebhookRoute route;
  private final URI url;
  private final Limits limits;
  private final TimeSource clock;
  private final Resolver resolver;
  private volatile @Nullable CompletableFuture<Integer> waiting;
  private volatile boolean closed;

  /** Asks name servers. */
  @FunctionalInterface
  interface Resolver {
    InetAddress[] addresses(String host) throws UnknownHostException;
  }

  WebhookChannel(WebhookRoute route, Limits limits, TimeSource clock, Resolver resolver) {
    this.route = route;
    this.url = URI.create(route.url());
    this.limits = limits;
    this.clock = clock;
    this.resolver = resolver;
  }

  @Override
  public String name() {
    return route.name();
  }

  /** Path and query may hold a key of the receiver's. */
  @Override
  public String leadsTo() {
    return url.getScheme() + "://" + url.getHost() + (url.getPort() < 0 ? "" : ":" + url.getPort());
  }

  @Override
  public Urgency least() {
    return route.least();
  }

  @Override
  public boolean json() {
    return true;
  }

  @Override
  public Delivery deliver(Letter letter) {
    try {
      String secret = SecretFile.read(Path.of(route.secretFile()), LEAST_SECRET);
      List<InetSocketAddress> ways = ways();
      try (HookClient client = new HookClient(route, limits, ways)) {
        return answered(send(client, letter, secret));
      }
    } catch (SocketTimeoutException | TimeoutException e) {
      return new Delivery.Later(
          "%s gave no answer within %d s".formatted(leadsTo(), limits.whole().toSeconds()));
    } catch (IOException e) {
      return Trust.trouble(e)
          .<Delivery>map(words -> new Delivery.Misconfigured(leadsTo() + ": " + words))
          .orElseGet(() -> new Delivery.Misconfigured(String.valueOf(e.getMessage())));
    } catch (ExecutionException e) {
      return failed(e.getCause() == null ? e : e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return new Delivery.Later("the service is stopping");
    }
  }

  @Override
  public void close() {
    closed = true;
    CompletableFuture<Integer> now = waiting;
    if (now != null) {
      now.completeExceptionally(new IOException("the service is stopping"));
    }
  }

  private List<InetSocketAddress> ways() throws UnknownHostException {
    String host = url.getHost().replaceAll("^\\[|\\]$", "");
    int port = url.getPort() > 0 ? url.getPort() : "https".equals(url.getScheme()) ? 443 : 80;
    InetAddress[] resolved;
    try {
      resolved = resolver.addresses(host);
    } catch (UnknownHostException e) {
      throw new UnknownHostException(
          "no machine is known as %s; check the name and the network".formatted(host));
    }
    return AddressGuard.allowed(host, resolved, route.reach()).stream()
        .map(address -> new InetSocketAddress(address, port))
        .toList();
  }

  private int send(HookClient client, Letter letter, String secret)
      throws InterruptedException, ExecutionException, TimeoutException, IOException {
    byte[] body = letter.body().getBytes(StandardCharsets.UTF_8);
    long seconds = clock.wall().getEpochSecond();
    CompletableFuture<Integer> status = new CompletableFuture<>();
    waiting = status;
    if (closed) {
      throw new IOException("the service is stopping");
    }
    Request request =
        client
            .jetty()
            .newRequest(url)
            .method(HttpMethod.POST)
            .timeout(limits.whole().toMillis(), TimeUnit.MILLISECONDS)
            .body(new BytesRequestContent("application/json", body))
            .headers(
                headers ->
                    headers
                        .put(Signature.ID, letter.id())
                        .put(Signature.TIMESTAMP, Long.toString(seconds))
                        .put(
                            Signature.SIGNATURE, Signature.of(secret, letter.id(), seconds, body)));
    request.onResponseHeaders(response -> status.complete(response.getStatus()));
    request.send(
        result -> {
          Throwable failure = result.getFailure();
          if (failure != null) {
            status.completeExceptionally(failure);
          }
        });
    return status.get(limits.whole().toMillis(), TimeUnit.MILLISECONDS);
  }

  private Delivery answered(int status) {
    String said = "%s answered %d".formatted(leadsTo(), status);
    if (status >= 200 && status < 300) {
      return new Delivery.Delivered(said);
    }
    if (status >= 300 && status < 400) {
      return new Delivery.Misconfigured(
          said + " and leads elsewhere, which is not followed; write the final address");
    }
    return switch (status) {
      case 401, 403, 404, 405 ->
          new Delivery.Misconfigured(said + "; check address and secret at both ends");
      case 408, 425, 429 -> new Delivery.Later(said + ": it asks to wait");
      default ->
          status < 500
              ? new Delivery.Refused(said + ": it will not take this message")
              : new Delivery.Later(said + ": it is in trouble");
    };
  }

  private Delivery failed(Throwable failure) {
    return Trust.trouble(failure)
        .<Delivery>map(words -> new Delivery.Misconfigured(leadsTo() + ": " + words))
        .orElseGet(
            () ->
                new Delivery.Later(
                    "%s: %s"
                        .formatted(
                            leadsTo(), Words.line(String.valueOf(failure.getMessage()), 160))));
  }
}
