package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What strangers and accidents send. Every answer's safety headers are checked by the client. */
class GuardTest {
  private static final String READING =
      "{\"conductivity\":1.5,\"unit\":\"mS/cm\",\"compensated\":\"to-25\"}";

  @RegisterExtension final RunningServer server = new RunningServer();

  private String raw(String requestLine, String... headers) throws Exception {
    return server
        .client()
        .raw(requestLine + "\r\n" + String.join("\r\n", headers) + "\r\nConnection: close\r\n\r\n");
  }

  @ParameterizedTest
  @ValueSource(strings = {"localhost", "127.0.0.1:8460", "LOCALHOST:1", "[::1]:8460", "[::1]"})
  void answersToItsOwnNames(String host) throws Exception {
    String answer = raw("GET /health HTTP/1.1", "Host: " + host);
    assertTrue(answer.startsWith("HTTP/1.1 200"), answer);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "rebound.example",
        "rebound.example:8460",
        "localhost.rebound.example",
        "127.0.0.1.rebound.example",
        "192.168.1.5:8460",
        "[::2]"
      })
  void refusesAnyOtherName(String host) throws Exception {
    JsonNode problem =
        TestClient.rawProblem(421, raw("GET /api/v1/points HTTP/1.1", "Host: " + host));
    assertTrue(problem.get("detail").asText().contains("http://localhost"));
    TestClient.rawProblem(421, raw("GET / HTTP/1.1", "Host: " + host));
  }

  @Test
  void refusesAStrangeNameInTheRequestLineToo() throws Exception {
    String answer = raw("GET http://rebound.example/health HTTP/1.1", "Host: localhost");
    assertTrue(answer.startsWith("HTTP/1.1 421") || answer.startsWith("HTTP/1.1 400"), answer);
    TestClient.rawProblem(421, raw("GET /health HTTP/1.0"));
  }

  @Test
  void lettingAStrangersPageChangeNothing() throws Exception {
    for (String origin :
        new String[] {"http://rebound.example", "null", "https://127.0.0.1:" + server.port()}) {
      JsonNode problem =
          TestClient.problem(
              403,
              server.client().post("/api/v1/points/drain/readings", READING, "Origin", origin));
      assertTrue(problem.get("detail").asText().contains(origin));
    }
    assertTrue(server.nursery().latest(FixtureNursery.DRAIN).isEmpty());
  }

  @Test
  void letsItsOwnPageAndPlainToolsChangeThings() throws Exception {
    String own = "http://127.0.0.1:" + server.port();
    HttpResponse<String> page =
        server.client().post("/api/v1/points/drain/readings", READING, "Origin", own);
    assertEquals(201, page.statusCode(), page::body);
    assertEquals(201, server.client().post("/api/v1/points/drain/readings", READING).statusCode());
  }

  @Test
  void takesOnlyJson() throws Exception {
    HttpResponse<String> form =
        server
            .client()
            .send(
                "POST",
                "/api/v1/points/drain/readings",
                HttpRequest.BodyPublishers.ofString(READING),
                "Content-Type",
                "text/plain");
    assertTrue(TestClient.problem(415, form).get("detail").asText().contains("application/json"));
    TestClient.problem(
        415,
        server
            .client()
            .send(
                "POST",
                "/api/v1/points/drain/readings",
                HttpRequest.BodyPublishers.ofString(READING)));
  }

  @Test
  void takesNoBodyBeyondTheLimitStatedOrNot() throws Exception {
    String big = " ".repeat(Body.LIMIT_OCTETS) + READING;
    TestClient.problem(413, server.client().post("/api/v1/points/drain/readings", big));
    HttpResponse<String> chunked =
        server
            .client()
            .send(
                "POST",
                "/api/v1/points/drain/readings",
                HttpRequest.BodyPublishers.ofInputStream(
                    () -> new ByteArrayInputStream(big.getBytes(StandardCharsets.UTF_8))),
                "Content-Type",
                "application/json");
    TestClient.problem(413, chunked);
    String justFits = " ".repeat(Body.LIMIT_OCTETS - READING.length()) + READING;
    assertEquals(201, server.client().post("/api/v1/points/drain/readings", justFits).statusCode());
  }

  @Test
  void saysWhereABodyStopsBeingJson() throws Exception {
    JsonNode problem =
        TestClient.problem(
            400,
            server
                .client()
                .post("/api/v1/points/drain/readings", "{\"conductivity\": 1.5,\n \"unit\": mS}"));
    assertTrue(problem.get("detail").asText().contains("line 2, column"), problem::toString);
    for (String body :
        new String[] {
          "", "[]", "1.5", "{\"a\":1}{}", "{\"a\":1,\"a\":2}", "{\"a\":NaN}", "\u0000"
        }) {
      TestClient.problem(400, server.client().post("/api/v1/points/drain/readings", body));
    }
    TestClient.problem(
        400, server.client().post("/api/v1/points/drain/readings", "[".repeat(60_000)));
  }

  @Test
  void hasNothingAtUnknownAddresses() throws Exception {
    for (String path : new String[] {"/api/v1/nothing", "/api/v2/points", "/nothing.js", "/x/"}) {
      TestClient.problem(404, server.client().get(path));
    }
    TestClient.problem(404, server.client().post("/api/v1/nothing", "{}"));
  }

  @Test
  void namesTheMethodsAnAddressHas() throws Exception {
    HttpResponse<String> answer = server.client().post("/api/v1/points", "{}");
    JsonNode problem = TestClient.problem(405, answer);
    assertEquals("GET, HEAD", answer.headers().firstValue("Allow").orElse(""));
    assertEquals(
        "POST is not possible at '/api/v1/points'; possible: GET, HEAD",
        problem.get("detail").asText());
    HttpResponse<String> other = server.client().get("/api/v1/setup/listen");
    TestClient.problem(405, other);
    assertEquals("POST", other.headers().firstValue("Allow").orElse(""));
  }

  @Test
  void answersHeadWithoutABody() throws Exception {
    HttpResponse<String> head = head("/health");
    assertEquals(200, head.statusCode());
    assertEquals("", head.body());
    assertEquals("application/json", head.headers().firstValue("Content-Type").orElse(""));
    assertEquals(404, head("/api/v1/points/pond").statusCode());
    assertEquals(404, head("/nothing.js").statusCode());
    assertTrue(head("/vendor/uPlot.esm.js").headers().firstValue("ETag").isPresent());
  }

  private HttpResponse<String> head(String path) throws Exception {
    return server.client().send("HEAD", path, HttpRequest.BodyPublishers.noBody());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "GET /health HTTP/9.9",
        "GET /%zz HTTP/1.1",
        "GET /a%00b HTTP/1.1",
        "GET /..%2f..%2fetc/passwd HTTP/1.1",
        "GET /%2e%2e/%2e%2e/etc/passwd HTTP/1.1",
        "GET /assets/..;/x HTTP/1.1",
        "GET /../../../etc/passwd HTTP/1.1",
        "GARBAGE"
      })
  void answersGarbageWithAProblemAndAllSafetyHeaders(String requestLine) throws Exception {
    String answer = raw(requestLine, "Host: localhost");
    assertTrue(answer.startsWith("HTTP/1.1 4") || answer.startsWith("HTTP/1.1 505"), answer);
    TestClient.rawProblem(Integer.parseInt(answer.substring(9, 12)), answer);
  }

  @ParameterizedTest
  @ValueSource(strings = {"broken", "beyond-repair"})
  void tellsNothingOfItsInsideWhenItFails(String profile) throws Exception {
    HttpResponse<String> answer =
        server
            .client()
            .post(
                "/api/v1/setup/listen",
                "{\"link\":\"/dev/ttyS1\",\"profile\":\"%s\"}".formatted(profile));
    TestClient.problem(500, answer);
    assertFalse(answer.body().contains("inside"), answer::body);
  }

  @Test
  void refusesHeadersBeyondTheLimit() throws Exception {
    TestClient.rawProblem(
        431, raw("GET /health HTTP/1.1", "Host: localhost", "X: " + "x".repeat(20_000)));
    TestClient.rawProblem(400, raw("GET /health HTTP/1.1"));
    TestClient.rawProblem(
        400, raw("GET /health HTTP/1.1", "Host: localhost", "Host: rebound.example"));
  }
}
