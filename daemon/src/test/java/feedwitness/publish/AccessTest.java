package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.ledger.Evidence;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The page taken to the barrel: who gets in, what each may do, and who did what. */
class AccessTest {
  private static final String READING =
      "{\"conductivity\":1.5,\"unit\":\"mS/cm\",\"compensated\":\"to-25\"}";
  private static final String READINGS = "/api/v1/points/drain/readings";

  @RegisterExtension final OpenServer server = new OpenServer(false);

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/health",
        "/api/v1/points",
        "/api/v1/stream",
        "/api/v1/export",
        "/api/v1/openapi.json",
        "/api/v1/access",
        "/api/v1/access/devices",
        "/index.html",
        "/assets/js/main.js",
        "/assets/js/api.js",
        "/vendor/uPlot.esm.js",
        "/nothing",
        "/pair.html/",
        "/pair.html;x",
        "/%70air.html",
        "//pair.html",
        "/assets/js/../../api/v1/points"
      })
  void showsAStrangerNothing(String path) throws Exception {
    HttpResponse<String> refused = server.phone().get(path);
    JsonNode problem = TestClient.problem(refused.statusCode() == 400 ? 400 : 401, refused);
    assertTrue(problem.get("detail").asText().length() > 10);
    HttpResponse<String> head =
        server.phone().send("HEAD", path, HttpRequest.BodyPublishers.noBody());
    assertTrue(head.statusCode() == 401 || head.statusCode() == 400, path);
  }

  @Test
  void leadsAStrangerToThePageWhereACodeIsTyped() throws Exception {
    HttpResponse<String> page = server.phone().get("/");
    assertEquals(401, page.statusCode());
    assertTrue(page.body().contains("data-pair"), page::body);
    assertEquals("no-store", page.headers().firstValue("Cache-Control").orElse(""));
    for (String file : new String[] {"/pair.html", "/assets/js/pair.js", "/assets/css/pair.css"}) {
      assertEquals(200, server.phone().get(file).statusCode(), file);
    }
  }

  @Test
  void refusesAStrangerWhoWantsToChangeSomething() throws Exception {
    TestClient.problem(401, server.phone().post(READINGS, READING));
    TestClient.problem(401, server.phone().post("/api/v1/access/codes", "{\"role\":\"see\"}"));
    TestClient.problem(401, server.phone().post("/api/v1/access/devices/x/revoke", "{}"));
    assertTrue(server.nursery().latest(FixtureNursery.DRAIN).isEmpty());
    assertEquals(List.of(), server.book().all("audit"));
  }

  @Test
  void letsThePhoneInThatTypesTheCodeShownAtTheDesk() throws Exception {
    HttpResponse<String> paired =
        OpenServer.pair(server.phone(), server.code("see-and-act"), "Barrel phone");
    String cookie = paired.headers().firstValue("Set-Cookie").orElseThrow();
    assertTrue(
        cookie.matches(
            "feedwitness-device=[\\w-]{43}; Path=/; Max-Age=34560000; HttpOnly; SameSite=Strict"),
        cookie);
    String own = OpenServer.cookie(paired);
    assertEquals(200, server.phone().get("/", "Cookie", own).statusCode());
    JsonNode self = TestClient.json(server.phone().get("/api/v1/access", "Cookie", own));
    assertEquals("device", self.get("by").asText());
    assertEquals("Barrel phone", self.get("name").asText());
    assertEquals(201, server.phone().post(READINGS, READING, "Cookie", own).statusCode());
  }

  @Test
  void takesTheCodeAsPeopleTypeItAndOnlyOnce() throws Exception {
    String code = server.code("see");
    String typed = " " + code.substring(0, 4) + " - " + code.substring(4);
    assertEquals(201, OpenServer.pair(server.phone(), typed, "Barrel phone").statusCode());
    JsonNode problem =
        TestClient.problem(422, OpenServer.pair(server.otherPhone(), code, "Another"));
    assertTrue(problem.get("detail").asText().contains("wrong, used or older than 5 minutes"));
    assertEquals("code", problem.at("/errors/0/field").asText());
  }

  @Test
  void takesNoCodeOlderThanFiveMinutes() throws Exception {
    String late = server.code("see");
    server.wait(Duration.ofMinutes(5));
    TestClient.problem(422, OpenServer.pair(server.phone(), late, "Late"));
    String inTime = server.code("see");
    server.wait(Duration.ofSeconds(299));
    assertEquals(201, OpenServer.pair(server.phone(), inTime, "In time").statusCode());
  }

  @Test
  void stopsWhoGuessesButNoOtherPhone() throws Exception {
    String code = server.code("see");
    String wrong = code.equals("00000000") ? "00000001" : "00000000";
    for (int i = 0; i < 5; i++) {
      TestClient.problem(422, OpenServer.pair(server.phone(), wrong, "Guess"));
    }
    HttpResponse<String> stopped = OpenServer.pair(server.phone(), code, "Guess");
    TestClient.problem(429, stopped);
    assertEquals("601", stopped.headers().firstValue("Retry-After").orElse(""));
    assertEquals(201, OpenServer.pair(server.otherPhone(), code, "Other").statusCode());
    server.wait(Duration.ofMinutes(10));
    assertEquals(201, OpenServer.pair(server.phone(), server.code("see"), "Now").statusCode());
  }

  @Test
  void letsWhoMayOnlyLookChangeNothing() throws Exception {
    String own = server.paired("see", "Helper phone");
    assertEquals(200, server.phone().get("/api/v1/points", "Cookie", own).statusCode());
    JsonNode problem =
        TestClient.problem(403, server.phone().post(READINGS, READING, "Cookie", own));
    assertTrue(problem.get("detail").asText().contains("'Helper phone' may look"));
    TestClient.problem(
        403, server.phone().post("/api/v1/access/codes", "{\"role\":\"see\"}", "Cookie", own));
    TestClient.problem(403, server.phone().get("/api/v1/access/devices", "Cookie", own));
    TestClient.problem(403, server.phone().post("/api/v1/backup", "{}", "Cookie", own));
    assertTrue(server.nursery().latest(FixtureNursery.DRAIN).isEmpty());
    assertEquals(
        200, server.phone().post("/api/v1/access/leave", "{}", "Cookie", own).statusCode());
    TestClient.problem(401, server.phone().get("/api/v1/points", "Cookie", own));
  }

  @Test
  void aPairedPhoneMayLetAnotherIn() throws Exception {
    String own = server.paired("see-and-act", "Barrel phone");
    JsonNode offer =
        TestClient.json(
            server.phone().post("/api/v1/access/codes", "{\"role\":\"see\"}", "Cookie", own));
    String name = "http://feed.quarry-end.example:";
    assertTrue(offer.get("address").asText().startsWith(name), offer::toString);
    assertEquals(
        offer.get("address").asText() + "#pair/" + offer.get("code").asText(),
        offer.get("link").asText());
    assertTrue(offer.at("/qr/path").asText().matches("(M\\d+ \\d+h\\d+v1h-\\d+z)+"));
    OpenServer.pair(server.otherPhone(), offer.get("code").asText(), "Helper phone");
    JsonNode list =
        TestClient.json(server.phone().get("/api/v1/access/devices", "Cookie", own)).get("devices");
    assertEquals("Barrel phone", list.at("/1/paired_by").asText());
    assertTrue(list.at("/0/self").asBoolean());
    assertFalse(list.toString().contains("sha256"));
  }

  @Test
  @Timeout(30)
  void shutsADeviceOutAtOnceAndItsStreamToo() throws Exception {
    String own = server.paired("see", "Lost phone");
    InetAddress phone = InetAddress.getByName(OpenServer.PHONE);
    String host = OpenServer.PHONE + ":" + server.phonePort();
    try (SseReader stream =
        new SseReader(phone, host, server.phonePort(), "Cookie: " + own, "Connection: close")) {
      stream.event("snapshot");
      HttpResponse<String> done =
          server.desk().post("/api/v1/access/devices/Lost%20phone/revoke", "{}");
      assertEquals(200, done.statusCode(), done::body);
      server.nursery().indicate(FixtureNursery.LINE, 1.5, 22);
      Map<String, String> next = stream.next();
      assertNull(next, "told something after it was shut out");
    }
    TestClient.problem(401, server.phone().get("/api/v1/points", "Cookie", own));
    TestClient.problem(404, server.desk().post("/api/v1/access/devices/Lost%20phone/revoke", "{}"));
  }

  @Test
  void remembersAcrossARestartWhoIsInAndWhoIsOut() throws Exception {
    String stays = server.paired("see-and-act", "Barrel phone");
    String goes = server.paired("see", "Lost phone");
    server.desk().post("/api/v1/access/devices/Lost%20phone/revoke", "{}");
    server.restart();
    assertEquals(200, server.phone().get("/api/v1/points", "Cookie", stays).statusCode());
    TestClient.problem(401, server.phone().get("/api/v1/points", "Cookie", goes));
  }

  @Test
  void keepsOfATokenOnlyItsHash() throws Exception {
    String own = server.paired("see", "Barrel phone");
    String token = own.substring(own.indexOf('=') + 1);
    List<Evidence> records = server.book().all("device");
    assertEquals(1, records.size());
    assertEquals("desk", records.get(0).author());
    assertTrue(records.get(0).field("token-sha256").matches("[0-9a-f]{64}"));
    assertFalse(records.toString().contains(token));
  }

  @Test
  void recordsWhoDidWhat() throws Exception {
    String own = server.paired("see-and-act", "Barrel phone");
    server.phone().post(READINGS, READING, "Cookie", own);
    server.desk().post(READINGS, "{\"conductivity\":-1}");
    List<Evidence> audit = server.book().all("audit");
    assertEquals(
        List.of(
            "desk: POST /api/v1/access/codes → 201",
            "Barrel phone: POST /api/v1/access/pair → 201",
            "Barrel phone: POST /api/v1/points/{name}/readings → 201",
            "desk: POST /api/v1/points/{name}/readings → 422"),
        audit.stream()
            .map(
                record ->
                    "%s: %s → %s"
                        .formatted(
                            record.author(), record.field("request"), record.field("status")))
            .toList());
    assertEquals("drain", audit.get(2).subject());
    assertEquals(OpenServer.PHONE, audit.get(2).field("from"));
    assertEquals("device", audit.get(2).field("by"));
  }

  @Test
  void letsNobodyInWhileThatCannotBeRecorded() throws Exception {
    String code = server.code("see");
    server.book().fill();
    JsonNode problem = TestClient.problem(507, OpenServer.pair(server.phone(), code, "Phone"));
    assertTrue(problem.get("detail").asText().contains("put on record"));
  }

  @Test
  void shutsOutEvenWhileThatCannotBeRecordedAndSaysSo() throws Exception {
    String own = server.paired("see", "Lost phone");
    server.book().fill();
    TestClient.problem(507, server.desk().post("/api/v1/access/devices/Lost%20phone/revoke", "{}"));
    TestClient.problem(401, server.phone().get("/api/v1/points", "Cookie", own));
  }

  @ParameterizedTest
  @ValueSource(strings = {"desk", " DESK ", "Command  line", "Barrel PHONE", "\u202Eenohp", " "})
  void letsNoDevicePassForAnother(String name) throws Exception {
    server.paired("see", "Barrel phone");
    String code = server.code("see");
    JsonNode problem = TestClient.problem(422, OpenServer.pair(server.otherPhone(), code, name));
    assertEquals("name", problem.at("/errors/0/field").asText());
    assertEquals(
        201, OpenServer.pair(server.otherPhone(), code, "Helper phone").statusCode(), "code kept");
  }

  @Test
  void takesTheKeyFromCommandsAndThrottlesGuessesAtIt() throws Exception {
    String right = server.key().authorization();
    JsonNode self = TestClient.json(server.phone().get("/api/v1/access", "Authorization", right));
    assertEquals("command-line", self.get("by").asText());
    for (int i = 0; i < 5; i++) {
      TestClient.problem(
          401, server.phone().get("/api/v1/access", "Authorization", "Bearer " + "x".repeat(43)));
    }
    TestClient.problem(429, server.phone().get("/api/v1/access", "Authorization", right));
    assertFalse(server.key().toString().contains(right.substring(7)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"X-Forwarded-For", "Forwarded", "X-Real-IP", "Via", "X-Forwarded-Proto"})
  void takesNobodyForTheDeskWhomAProxyHandedOn(String header) throws Exception {
    TestClient.problem(401, server.desk().get("/api/v1/points", header, "127.0.0.1"));
  }

  @Test
  void takesNobodyForTheDeskWhoCallsItByAnotherName() throws Exception {
    String answer =
        server
            .desk()
            .raw(
                "GET /api/v1/points HTTP/1.1\r\nHost: feed.quarry-end.example\r\nConnection: close\r\n\r\n");
    TestClient.rawProblem(401, answer);
    String stranger =
        server.desk().raw("GET / HTTP/1.1\r\nHost: rebound.example\r\nConnection: close\r\n\r\n");
    TestClient.rawProblem(421, stranger);
  }

  @Test
  void letsAStrangersPageUseNoPairedPhone() throws Exception {
    String own = server.paired("see-and-act", "Barrel phone");
    TestClient.problem(
        403,
        server.phone().post(READINGS, READING, "Cookie", own, "Origin", "http://rebound.example"));
    String right = "http://" + OpenServer.PHONE + ":" + server.phonePort();
    assertEquals(
        201, server.phone().post(READINGS, READING, "Cookie", own, "Origin", right).statusCode());
  }

  @Test
  @Timeout(60)
  void strangersWhoDribbleTheirRequestsHoldNobodyUp() throws Exception {
    String own = server.paired("see", "Barrel phone");
    List<Socket> dribbling = new ArrayList<>();
    try {
      for (int i = 0; i < 40; i++) {
        Socket socket = new Socket(OpenServer.PHONE, server.phonePort());
        dribbling.add(socket);
        socket
            .getOutputStream()
            .write(
                "POST /api/v1/access/pair HTTP/1.1\r\nHost: %s\r\nContent-Type: application/json\r\nContent-Length: 60\r\n\r\n{"
                    .formatted(OpenServer.PHONE)
                    .getBytes(StandardCharsets.US_ASCII));
      }
      assertEquals(200, server.phone().get("/api/v1/points", "Cookie", own).statusCode());
      assertEquals(200, server.desk().get("/api/v1/points").statusCode());
      TestClient.problem(503, OpenServer.pair(server.phone(), "12345678", "Phone"));
    } finally {
      for (Socket socket : dribbling) {
        socket.close();
      }
    }
  }
}
