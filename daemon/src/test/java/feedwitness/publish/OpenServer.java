package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import feedwitness.publish.access.AccessKey;
import feedwitness.quantity.ListenAddress;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/** The real server with an access key, at the desk and as phones see it. */
final class OpenServer implements BeforeEachCallback, AfterEachCallback {
  static final String PHONE = "127.0.0.7";
  static final String OTHER_PHONE = "127.0.0.8";
  private static final String NAME = "feed.quarry-end.example";

  private final FixtureBook book = new FixtureBook();
  private final FixtureAccess access = new FixtureAccess(book);
  private final FixtureNursery nursery = new FixtureNursery();
  private final boolean behindProxy;
  private WebServer server = none();
  private Optional<AccessKey> key = Optional.empty();
  private Optional<Relay> phone = Optional.empty();
  private Optional<Relay> otherPhone = Optional.empty();
  private int port;

  OpenServer(boolean behindProxy) {
    this.behindProxy = behindProxy;
  }

  @Override
  public void beforeEach(ExtensionContext context) throws Exception {
    Path file = Files.createTempDirectory("feedwitness").resolve("access.key");
    AccessKey.make(file);
    key = Optional.of(assertInstanceOf(AccessKey.Reading.Good.class, AccessKey.read(file)).key());
    Files.delete(file);
    Files.delete(file.resolveSibling(""));
    start();
  }

  private void start() throws Exception {
    server =
        new WebServer(
            FixtureDesks.of(nursery),
            access.open(
                new ListenAddress("127.0.0.1", 0),
                List.of(NAME, PHONE, OTHER_PHONE),
                key.orElseThrow(),
                false,
                behindProxy),
            Optional.empty());
    port = assertInstanceOf(WebServer.Outcome.Started.class, server.start()).port();
    phone = Optional.of(new Relay(PHONE, port));
    otherPhone = Optional.of(new Relay(OTHER_PHONE, port));
  }

  /** As after a power cut: what is not on record is forgotten. */
  void restart() throws Exception {
    afterEach(null);
    start();
  }

  @Override
  public void afterEach(@org.jspecify.annotations.Nullable ExtensionContext context)
      throws Exception {
    phone.orElseThrow().close();
    otherPhone.orElseThrow().close();
    server.close();
  }

  private WebServer none() {
    return new WebServer(
        FixtureDesks.of(nursery),
        access.closed(new ListenAddress("127.0.0.1", 0)),
        Optional.empty());
  }

  FixtureBook book() {
    return book;
  }

  FixtureNursery nursery() {
    return nursery;
  }

  AccessKey key() {
    return key.orElseThrow();
  }

  int phonePort() {
    return phone.orElseThrow().port();
  }

  void wait(Duration duration) {
    access.wait(duration);
  }

  TestClient desk() {
    return new TestClient(port);
  }

  TestClient phone() {
    return new TestClient(PHONE, phonePort());
  }

  TestClient otherPhone() {
    return new TestClient(OTHER_PHONE, otherPhone.orElseThrow().port());
  }

  /** A code shown at the desk. */
  String code(String role) throws Exception {
    HttpResponse<String> answer =
        desk().post("/api/v1/access/codes", "{\"role\":\"%s\"}".formatted(role));
    assertEquals(201, answer.statusCode(), answer::body);
    return TestClient.json(answer).get("code").asText();
  }

  static HttpResponse<String> pair(TestClient phone, String code, String name) throws Exception {
    return phone.post(
        "/api/v1/access/pair", "{\"code\":\"%s\",\"name\":\"%s\"}".formatted(code, name));
  }

  /** Pairs; what the phone sends from then on as its cookie. */
  String paired(String role, String name) throws Exception {
    HttpResponse<String> answer = pair(phone(), code(role), name);
    assertEquals(201, answer.statusCode(), answer::body);
    return cookie(answer);
  }

  static String cookie(HttpResponse<String> answer) {
    return answer.headers().firstValue("Set-Cookie").orElseThrow().split(";", 2)[0];
  }
}
