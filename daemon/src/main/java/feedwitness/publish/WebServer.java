package feedwitness.publish;

import feedwitness.publish.access.Access;
import feedwitness.publish.access.TlsKeeper;
import feedwitness.quantity.ListenAddress;
import io.javalin.Javalin;
import io.javalin.compression.CompressionStrategy;
import io.javalin.config.JavalinConfig;
import io.javalin.http.HandlerType;
import io.javalin.router.Endpoint;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.net.URI;
import java.nio.channels.ServerSocketChannel;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.eclipse.jetty.http.HttpVersion;
import org.eclipse.jetty.server.ConnectionFactory;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.SslConnectionFactory;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.jspecify.annotations.Nullable;
import org.tinylog.Logger;

/**
 * The page and the interface over HTTP. Start once, close once. Answers on few threads of its own;
 * event streams have one thread each besides.
 */
public final class WebServer implements AutoCloseable {
  private static final int MOST_THREADS = 16;
  private static final int FEWEST_THREADS = 4;
  private static final int THREAD_IDLE_MILLIS = 60_000;

  /** Also ends a connection whose client neither sends nor takes anything. */
  private static final int CONNECTION_IDLE_MILLIS = 30_000;

  /** For answers still on their way to a client when the service stops. */
  private static final long STOP_MILLIS = 2_000;

  /** How long a stop waits for connections kept open without a request. */
  private static final long IDLE_AT_STOP_MILLIS = 50;

  private final ListenAddress listen;
  private final Access access;
  private final Optional<TlsKeeper> tls;
  private final OpenHours hours = new OpenHours();
  private final Streams streams;
  private final List<Endpoint> routes;
  private final Javalin javalin;
  private @Nullable ServerSocketChannel socket;

  /** Makes a server that is not listening yet. */
  public WebServer(Desks desks, Access access, Optional<TlsKeeper> tls) {
    this(desks, access, tls, StreamLimits.USUAL);
  }

  WebServer(Desks desks, Access access, Optional<TlsKeeper> tls, StreamLimits limits) {
    this.access = access;
    this.tls = tls;
    this.listen = access.settings().listen();
    this.streams = new Streams(desks.live(), desks.alarms(), limits);
    this.routes = new Routes(desks, access, hours, streams).all();
    this.javalin = Javalin.create(this::configure);
  }

  /** Starts to listen. */
  public Outcome start() {
    if (!listen.isLoopback() && !access.settings().open()) {
      return new Outcome.Refused(
          "%s is reachable from other machines, which needs an access key; make one with: feedwitness access-key FILE, name it as access-key-file in [web], or listen on 127.0.0.1:%d"
              .formatted(listen.text(), listen.port()));
    }
    int port;
    try {
      ServerSocketChannel bound = bind();
      socket = bound;
      port = bound.socket().getLocalPort();
    } catch (IOException e) {
      return new Outcome.Refused(
          "%s is taken by another program or cannot be listened on (%s); stop that program or listen on another port, for example %s"
              .formatted(
                  listen.text(),
                  e.getMessage(),
                  listen.withPort(listen.port() % 65535 + 1).text()));
    }
    javalin.start();
    streams.start();
    tls.ifPresent(TlsKeeper::start);
    return new Outcome.Started(port, URI.create(ownScheme() + reachable(port).text() + "/"));
  }

  /** As commands on this machine reach it, whatever stands before it. */
  private String ownScheme() {
    return tls.isPresent() ? "https://" : "http://";
  }

  private ListenAddress reachable(int port) {
    return switch (listen.host()) {
      case "0.0.0.0" -> new ListenAddress("127.0.0.1", port);
      case "::", "0:0:0:0:0:0:0:0" -> new ListenAddress("::1", port);
      default -> listen.withPort(port);
    };
  }

  /** Before the library starts, which would log a taken port as a failure of its own. */
  private ServerSocketChannel bind() throws IOException {
    InetSocketAddress address = new InetSocketAddress(listen.host(), listen.port());
    if (address.isUnresolved()) {
      throw new IOException("this machine does not know an address of that name");
    }
    if (listen.isLoopback() && !address.getAddress().isLoopbackAddress()) {
      throw new IOException("this machine does not know it as its own loopback address");
    }
    ServerSocketChannel channel = ServerSocketChannel.open();
    try {
      channel.setOption(StandardSocketOptions.SO_REUSEADDR, true);
      channel.bind(address);
      return channel;
    } catch (IOException e) {
      channel.close();
      throw e;
    }
  }

  /**
   * Ends all streams, lets requests finish and stops listening; needs a few seconds at most besides
   * what the requests inside take.
   */
  @Override
  public void close() {
    streams.close();
    hours.close();
    javalin.stop();
    tls.ifPresent(TlsKeeper::close);
  }

  List<Endpoint> routes() {
    return routes;
  }

  int openStreams() {
    return streams.count();
  }

  private void configure(JavalinConfig config) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.concurrency.useVirtualThreads = false;
    config.http.prefer405over404 = true;
    config.http.generateEtags = false;
    config.http.asyncTimeout = 0;
    config.http.maxRequestSize = Body.LARGE_OCTETS;
    config.http.compressionStrategy = CompressionStrategy.NONE;
    config.http.defaultContentType = Json.MEDIA_TYPE;
    config.router.javaLangErrorHandler(
        (response, error) -> {
          Logger.error(error, "a request failed");
          ProblemAnswers.write(response, Failures.UNEXPECTED);
        });
    config.resourceHandler(new PageFiles());
    routes.forEach(config.routes::addEndpoint);
    // Left to itself, the library answers HEAD with 200 without asking the handler.
    routes.stream()
        .filter(route -> route.method.equals(HandlerType.GET))
        .map(route -> new Endpoint(HandlerType.HEAD, route.path, route.handler))
        .forEach(config.routes::addEndpoint);
    new Failures(routes, config.router).register(config.routes);
    configureJetty(config);
  }

  private void configureJetty(JavalinConfig config) {
    QueuedThreadPool threads =
        new QueuedThreadPool(MOST_THREADS, FEWEST_THREADS, THREAD_IDLE_MILLIS);
    threads.setName("web");
    threads.setDaemon(true);
    config.jetty.threadPool = threads;
    config.jetty.modifyHttpConfiguration(
        http -> {
          http.setSendServerVersion(false);
          http.setIdleTimeout(CONNECTION_IDLE_MILLIS);
        });
    config.jetty.addConnector(this::connector);
    config.jetty.modifyServletContextHandler(context -> context.setErrorHandler(new JettyErrors()));
    config.jetty.modifyServer(this::guard);
  }

  private ServerConnector connector(Server server, HttpConfiguration http) {
    ServerConnector connector = new ServerConnector(server, 1, 1, protocols(http));
    connector.setIdleTimeout(CONNECTION_IDLE_MILLIS);
    connector.setShutdownIdleTimeout(IDLE_AT_STOP_MILLIS);
    try {
      connector.open(Objects.requireNonNull(socket));
    } catch (IOException e) {
      throw new UncheckedIOException("cannot use the bound socket", e);
    }
    return connector;
  }

  private ConnectionFactory[] protocols(HttpConfiguration http) {
    if (tls.isEmpty()) {
      return new ConnectionFactory[] {new HttpConnectionFactory(http)};
    }
    // Which names are answered to is the gate's to say, for TLS and without.
    http.addCustomizer(new SecureRequestCustomizer(false));
    return new ConnectionFactory[] {
      new SslConnectionFactory(tls.get().factory(), HttpVersion.HTTP_1_1.asString()),
      new HttpConnectionFactory(http)
    };
  }

  private void guard(Server server) {
    server.setErrorHandler(new JettyErrors());
    server.setStopTimeout(STOP_MILLIS);
    server.insertHandler(new Turnstile(access));
    server.insertHandler(new Gate(access.settings()));
  }

  /** Whether it listens. */
  public sealed interface Outcome {
    /**
     * Listening.
     *
     * @param port the actual one
     * @param url of the page
     */
    record Started(int port, URI url) implements Outcome {}

    /**
     * Not listening.
     *
     * @param why item and remedy, for people
     */
    record Refused(String why) implements Outcome {}
  }
}
