package feedwitness.publish.message;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.HttpServer;
import feedwitness.publish.message.Counter.Behaviour;
import feedwitness.publish.message.Counter.Guest;
import feedwitness.quantity.TimeSource;
import feedwitness.site.WebhookRoute.Reach;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Against real receivers on loopback, willing and unwilling. */
@Timeout(60)
class WebhookTest {
  private static final InetAddress HERE = InetAddress.getLoopbackAddress();

  @TempDir Path folder;
  private Limits limits = Limits.USUAL;
  private Path secret = Path.of("");
  private Instant wall = Bench.MONDAY;

  @BeforeEach
  void writeSecret() throws Exception {
    secret = Bench.secret(folder, Bench.SECRET);
  }

  @AfterEach
  void nothingIsLeftBehind() throws Exception {
    Bench.noThreadIsLeft();
  }

  private TimeSource clock() {
    return new TimeSource() {
      @Override
      public long monotonicNanos() {
        return System.nanoTime();
      }

      @Override
      public Instant wall() {
        return wall;
      }
    };
  }

  private WebhookChannel channel(
      String url, Reach reach, Optional<String> ca, WebhookChannel.Resolver resolver) {
    return new WebhookChannel(Bench.hook(url, secret, reach, ca), limits, clock(), resolver);
  }

  private Delivery deliver(String url) {
    return channel(url, Reach.LOOPBACK, Optional.empty(), host -> new InetAddress[] {HERE})
        .deliver(Bench.letter(Letter.Kind.ALARMS));
  }

  private Delivery to(Behaviour behaviour) throws Exception {
    try (Counter receiver = new Counter(behaviour)) {
      return deliver("http://localhost:" + receiver.port() + "/feed");
    }
  }

  private Delivery answering(String status) throws Exception {
    return to(
        guest -> {
          guest.hearHeaders();
          guest.say("HTTP/1.1 " + status, "Content-Length: 0", "");
        });
  }

  private static void later(Delivery delivery, String... words) {
    assertInstanceOf(Delivery.Later.class, delivery);
    said(delivery, words);
  }

  private static void mend(Delivery delivery, String... words) {
    assertInstanceOf(Delivery.Misconfigured.class, delivery, delivery::said);
    said(delivery, words);
  }

  private static void said(Delivery delivery, String... words) {
    for (String word : words) {
      assertTrue(delivery.said().contains(word), delivery.said());
    }
    assertTrue(!delivery.said().contains(Bench.SECRET), delivery.said());
    assertTrue(delivery.said().length() < 400, delivery.said());
  }

  /** What a receiver gets to see. */
  private record Got(String id, String timestamp, String signature, String body, String host) {}

  @Test
  void theReceiverCanProveWhoSentAndWhen() throws Exception {
    List<Got> got = new CopyOnWriteArrayList<>();
    HttpServer receiver = HttpServer.create(new InetSocketAddress(HERE, 0), 0);
    receiver.createContext(
        "/feed",
        exchange -> {
          String body =
              new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
          got.add(
              new Got(
                  exchange.getRequestHeaders().getFirst("Idempotency-Key"),
                  exchange.getRequestHeaders().getFirst("Feedwitness-Timestamp"),
                  exchange.getRequestHeaders().getFirst("Feedwitness-Signature"),
                  body,
                  exchange.getRequestHeaders().getFirst("Host")));
          exchange.sendResponseHeaders(204, -1);
        });
    receiver.start();
    try {
      String url = "http://hooks.quarry-end.example:" + receiver.getAddress().getPort() + "/feed";
      assertInstanceOf(Delivery.Delivered.class, deliver(url));
      wall = wall.plusSeconds(40);
      assertInstanceOf(Delivery.Delivered.class, deliver(url));
    } finally {
      receiver.stop(0);
    }
    Letter letter = Bench.letter(Letter.Kind.ALARMS);
    for (Got each : got) {
      assertEquals(letter.id(), each.id());
      assertEquals(letter.body(), each.body());
      assertTrue(each.host().startsWith("hooks.quarry-end.example:"), each.host());
      assertEquals(
          Signature.of(
              Bench.SECRET,
              each.id(),
              Long.parseLong(each.timestamp()),
              each.body().getBytes(StandardCharsets.UTF_8)),
          each.signature());
    }
    assertEquals("" + Bench.MONDAY.getEpochSecond(), got.get(0).timestamp());
    assertNotEquals(got.get(0).signature(), got.get(1).signature());
  }

  /** The other side was computed with {@code openssl dgst -sha256 -hmac}. */
  @Test
  void theSignatureIsWhatOpensslMakesOfIt() {
    assertEquals(
        "v1=28c9f3e49f28373363ca5525cc0a340bef2732ce5b4370bfc4c3481b68797bf9",
        Signature.of("Jefe", "id", 1, new byte[0]));
    assertEquals(
        "v1=ea899f46798c4518db7e633766f054bda7592785697be88bf4bbe7fe324c1569",
        Signature.of(
            Bench.SECRET, "id", 1, "{\"kind\":\"test\"}".getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void nobodyListens() throws Exception {
    later(deliver("http://localhost:" + Counter.closedPort() + "/"), "localhost");
  }

  @Test
  void itNeverAnswers() throws Exception {
    limits = Bench.SHORT;
    later(to(Guest::hang));
  }

  @Test
  void itFallsSilentInTheMiddleOfItsAnswer() throws Exception {
    limits = Bench.SHORT;
    later(
        to(
            guest -> {
              guest.hearHeaders();
              guest.raw("HTTP/1.1 20");
              guest.hang();
            }));
  }

  @Test
  void itHangsUpWithoutAWord() throws Exception {
    later(to(Guest::hearHeaders));
  }

  @Test
  void itTricklesItsHeaders() throws Exception {
    limits = Bench.SHORT;
    later(
        to(
            guest -> {
              guest.hearHeaders();
              guest.trickle("HTTP/1.1 200 OK\r\nX-Slow: ");
            }));
  }

  @Test
  void itSendsHeadersWithoutEnd() throws Exception {
    later(
        to(
            guest -> {
              guest.hearHeaders();
              guest.flood("HTTP/1.1 200 OK\r\nX-Long: ");
            }));
  }

  @Test
  void whatFollowsTheStatusIsNotReadHoweverMuchItIs() throws Exception {
    assertInstanceOf(
        Delivery.Delivered.class,
        to(
            guest -> {
              guest.hearHeaders();
              guest.flood("HTTP/1.1 200 OK\r\nContent-Length: 100000000\r\n\r\n");
            }));
  }

  @Test
  void itDoesNotSpeakHttp() throws Exception {
    later(to(guest -> guest.say("220 mail.quarry-end.example", "")));
  }

  @Test
  void itIsInTroubleOrAsksToWait() throws Exception {
    later(answering("503 Service Unavailable"), "503", "in trouble");
    later(answering("429 Too Many Requests"), "429", "asks to wait");
  }

  @Test
  void itWillNotTakeTheMessage() throws Exception {
    Delivery delivery = answering("413 Content Too Large");
    said(assertInstanceOf(Delivery.Refused.class, delivery), "413");
  }

  @Test
  void itDoesNotKnowUs() throws Exception {
    mend(answering("401 Unauthorized"), "401", "secret");
    mend(answering("404 Not Found"), "404", "address");
  }

  @Test
  void aRedirectIsNotFollowed() throws Exception {
    try (Counter inside = new Counter(Guest::hearHeaders)) {
      mend(
          to(
              guest -> {
                guest.hearHeaders();
                guest.say(
                    "HTTP/1.1 307 Temporary Redirect",
                    "Location: http://localhost:%d/".formatted(inside.port()),
                    "Content-Length: 0",
                    "");
              }),
          "307",
          "not followed");
      assertEquals(0, inside.served());
    }
  }

  private Delivery overTls(Certificates shown, Certificates trusted) throws Exception {
    try (Counter receiver =
        new Counter(
            guest -> {
              guest.secure(shown.context());
              guest.hearHeaders();
              guest.say("HTTP/1.1 200 OK", "Content-Length: 0", "");
            })) {
      return channel(
              "https://localhost:" + receiver.port() + "/feed",
              Reach.LOOPBACK,
              Optional.of(trusted.pem()),
              host -> new InetAddress[] {HERE})
          .deliver(Bench.letter(Letter.Kind.ALARMS));
    }
  }

  @Test
  void itsCertificateIsLookedAt() throws Exception {
    assertInstanceOf(Delivery.Delivered.class, overTls(Certificates.GOOD, Certificates.GOOD));
    mend(overTls(Certificates.GOOD, Certificates.OF_ANOTHER_NAME), "certificate");
    mend(overTls(Certificates.EXPIRED, Certificates.EXPIRED), "has expired");
    mend(overTls(Certificates.OF_ANOTHER_NAME, Certificates.OF_ANOTHER_NAME), "not for this name");
  }

  private int knocksAt(Reach reach, InetAddress... resolved) throws Exception {
    try (Counter inside = new Counter(Guest::hearHeaders)) {
      mend(
          channel(
                  "http://hooks.quarry-end.example:" + inside.port() + "/",
                  reach,
                  Optional.empty(),
                  host -> resolved)
              .deliver(Bench.letter(Letter.Kind.ALARMS)),
          "may only be reached",
          "'reach'");
      return inside.served();
    }
  }

  @Test
  void aNameThatLeadsToThisMachineIsNotReachedUnlessAllowed() throws Exception {
    assertEquals(0, knocksAt(Reach.PUBLIC, HERE));
    assertEquals(0, knocksAt(Reach.PRIVATE, HERE, HERE));
    assertEquals(0, knocksAt(Reach.LOOPBACK, InetAddress.getByName("169.254.169.254")));
    assertEquals(0, knocksAt(Reach.PUBLIC, InetAddress.getByName("::ffff:127.0.0.1")));
  }

  @Test
  void aNameThatResolvesToSomethingElseAMomentLaterChangesNothing() throws Exception {
    AtomicInteger asked = new AtomicInteger();
    InetAddress elsewhere = InetAddress.getByName("127.0.0.2");
    try (Counter receiver =
        new Counter(
            guest -> {
              guest.hearHeaders();
              guest.say("HTTP/1.1 200 OK", "Content-Length: 0", "");
            })) {
      Delivery delivery =
          channel(
                  "http://rebinding.quarry-end.example:" + receiver.port() + "/",
                  Reach.LOOPBACK,
                  Optional.empty(),
                  host -> new InetAddress[] {asked.incrementAndGet() == 1 ? HERE : elsewhere})
              .deliver(Bench.letter(Letter.Kind.ALARMS));
      assertInstanceOf(Delivery.Delivered.class, delivery);
      assertEquals(1, asked.get());
      assertEquals(1, receiver.served());
    }
  }

  @Test
  void pathAndQueryStandNowhereBecauseTheyMayHoldAKey() throws Exception {
    WebhookChannel channel =
        channel(
            "https://hooks.quarry-end.example/key-4711?token=4711",
            Reach.PUBLIC,
            Optional.empty(),
            host -> new InetAddress[] {HERE});
    assertEquals("https://hooks.quarry-end.example", channel.leadsTo());
    assertTrue(!channel.deliver(Bench.letter(Letter.Kind.ALARMS)).said().contains("4711"));
  }

  @Test
  void aSecretTooShortToProtectIsNotUsed() throws Exception {
    secret = Bench.secret(folder, "short");
    mend(deliver("http://localhost:1/"), "24 to");
  }
}
