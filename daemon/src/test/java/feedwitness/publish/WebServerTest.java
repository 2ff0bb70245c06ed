package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.publish.access.Access;
import feedwitness.quantity.ListenAddress;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WebServerTest {
  private static WebServer server(String host, int port) {
    FixtureNursery nursery = new FixtureNursery();
    return new WebServer(FixtureDesks.of(nursery), access(host, port), Optional.empty());
  }

  private static Access access(String host, int port) {
    return new FixtureAccess(new FixtureBook()).closed(new ListenAddress(host, port));
  }

  @Test
  void saysWhereThePageIs() throws Exception {
    try (WebServer server = server("localhost", 0)) {
      WebServer.Outcome.Started started =
          assertInstanceOf(WebServer.Outcome.Started.class, server.start());
      assertEquals("http://localhost:" + started.port() + "/", started.url().toString());
      assertEquals(200, new TestClient(started.port()).get("/").statusCode());
    }
  }

  @Test
  void saysThatItsPortIsTakenAndWhatToDo() throws Exception {
    try (ServerSocket other = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
        WebServer server = server("127.0.0.1", other.getLocalPort())) {
      String why = assertInstanceOf(WebServer.Outcome.Refused.class, server.start()).why();
      assertTrue(why.startsWith("127.0.0.1:" + other.getLocalPort() + " is taken"), why);
      assertTrue(why.contains("another port"), why);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"0.0.0.0", "192.168.1.5", "::", "nursery.example", "127.example", "127.0.0.256"})
  void listensOnThisMachineOnlyWithoutAnAccessKey(String host) {
    try (WebServer server = server(host, 8460)) {
      String why = assertInstanceOf(WebServer.Outcome.Refused.class, server.start()).why();
      assertTrue(why.contains("127.0.0.1:8460") && why.contains("access key"), why);
    }
  }

  @Test
  @Timeout(60)
  void refusesTheSixtyFifthStreamAndStillAnswers() throws Exception {
    List<SseReader> streams = new ArrayList<>();
    try (WebServer server = server("127.0.0.1", 0)) {
      int port = assertInstanceOf(WebServer.Outcome.Started.class, server.start()).port();
      for (int i = 0; i < 64; i++) {
        SseReader stream = new SseReader(port);
        stream.event("snapshot");
        streams.add(stream);
      }
      TestClient.problem(503, new TestClient(port).get("/api/v1/stream"));
      assertEquals(200, new TestClient(port).get("/api/v1/points").statusCode());
    } finally {
      for (SseReader stream : streams) {
        stream.close();
      }
    }
  }

  @Test
  void canBeClosedTwiceAndWithoutEverStarting() {
    WebServer server = server("127.0.0.1", 0);
    server.start();
    server.close();
    server.close();
    server("127.0.0.1", 0).close();
  }

  @Test
  @Timeout(30)
  void letsARequestInsideFinishBeforeItStopsAndInterruptsNobody() throws Exception {
    FixtureNursery nursery = new FixtureNursery();
    FixtureDesk desk = new FixtureDesk();
    WebServer server =
        new WebServer(FixtureDesks.of(nursery, desk), access("127.0.0.1", 0), Optional.empty());
    int port = assertInstanceOf(WebServer.Outcome.Started.class, server.start()).port();
    TestClient client = new TestClient(port);
    String body =
        "{\"link\":\"%s\",\"profile\":\"line-push\",\"seconds\":1}".formatted(FixtureDesk.SLOW);
    CompletableFuture<HttpResponse<String>> answer =
        CompletableFuture.supplyAsync(
            () -> {
              try {
                return client.post("/api/v1/setup/listen", body);
              } catch (Exception e) {
                throw new CompletionException(e);
              }
            });
    desk.awaitListener();
    CompletableFuture<Void> closing = CompletableFuture.runAsync(server::close);
    while (client.get("/health").statusCode() == 200) {
      Thread.onSpinWait();
    }
    TestClient.problem(503, client.get("/health"));
    assertFalse(closing.isDone());
    desk.release();
    assertEquals(200, answer.get().statusCode());
    closing.get();
    assertFalse(desk.wasInterrupted());
  }

  @Test
  void readsListenAddressesAsPeopleWriteThem() {
    assertEquals(new ListenAddress("127.0.0.1", 8460), ListenAddress.parse("127.0.0.1:8460"));
    assertEquals(new ListenAddress("::1", 8460), ListenAddress.parse("[::1]:8460"));
    assertEquals("[::1]:8460", ListenAddress.parse("[::1]:8460").text());
    for (String wrong : new String[] {"8460", ":8460", "localhost", "localhost:x", "::1:80", ""}) {
      IllegalArgumentException e =
          assertThrows(IllegalArgumentException.class, () -> ListenAddress.parse(wrong));
      assertTrue(String.valueOf(e.getMessage()).contains("127.0.0.1:8460"));
    }
    assertThrows(IllegalArgumentException.class, () -> ListenAddress.parse("localhost:65536"));
  }
}
