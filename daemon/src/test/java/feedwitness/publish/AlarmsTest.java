package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.sample.Missing;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Alarms over the interface: how they stand, and what people may do about them. */
@Timeout(60)
class AlarmsTest {
  private static final String HIGH = "/api/v1/alarms/line/conductivity-high";
  private static final String KIM = "{\"who\":\"Kim\"}";

  @RegisterExtension final RunningServer server = new RunningServer();

  private JsonNode alarms() throws Exception {
    return TestClient.json(server.client().get("/api/v1/alarms"));
  }

  private JsonNode post(String path, String body) throws Exception {
    return TestClient.json(server.client().post(path, body));
  }

  /** The line carries 2.86 mS/cm for a minute. */
  private void tooStrong() {
    server.nursery().indicate(FixtureNursery.LINE, 2.86, 25);
    server.pass(61);
  }

  private void backToNormal() {
    server.nursery().indicate(FixtureNursery.LINE, 1.5, 25);
    server.pass(61);
  }

  @Test
  void listsNothingWhileAllIsWell() throws Exception {
    server.nursery().indicate(FixtureNursery.LINE, 1.5, 25);
    server.nursery().indicate(FixtureNursery.TANK, 9.9, 25);
    server.pass(65);
    JsonNode list = alarms();
    assertEquals(0, list.get("needs_answer").asInt());
    assertEquals(0, list.get("alarms").size(), "no limits, no alarm: " + list);
  }

  @Test
  void saysWhatIsWrongWhyAndWhatToDo() throws Exception {
    tooStrong();
    JsonNode list = alarms();
    assertEquals(1, list.get("needs_answer").asInt());
    JsonNode alarm = list.at("/alarms/0");
    assertEquals("line/conductivity-high", alarm.get("id").asText());
    assertEquals("Glasshouse line", alarm.get("subject_title").asText());
    assertEquals("high", alarm.get("priority").asText());
    assertEquals("unacknowledged", alarm.get("state").asText());
    assertEquals("2.86", alarm.get("value").asText());
    assertEquals("2.4", alarm.get("limit").asText());
    assertEquals(
        "line: 2.86 mS/cm is above the high limit 2.40 mS/cm", alarm.get("words").asText());
    assertTrue(alarm.get("what_to_do").asText().contains("injector"));
    assertEquals("2026-06-01T08:01:00.000Z", alarm.get("raised").asText());
  }

  @Test
  void takesAnAnswerWithItsNoteAndTakesItBack() throws Exception {
    tooStrong();
    JsonNode answered =
        post(HIGH + "/acknowledge", "{\"who\":\"Kim\",\"note\":\"injector\\nreset\"}");
    assertEquals("acknowledged", answered.get("state").asText());
    assertEquals("injector\nreset", answered.at("/answer/note").asText());
    assertTrue(answered.get("can_undo").asBoolean());
    assertEquals("unacknowledged", post(HIGH + "/undo", KIM).get("state").asText());
    TestClient.problem(409, server.client().post(HIGH + "/undo", KIM));

    post(HIGH + "/acknowledge", KIM);
    server.pass(601);
    JsonNode late = TestClient.problem(409, server.client().post(HIGH + "/undo", KIM));
    assertTrue(late.get("detail").asText().contains("10 min"), late::toString);
    assertFalse(alarms().at("/alarms/0/can_undo").asBoolean());
  }

  @Test
  void keepsWhatReturnedUntilItIsAnswered() throws Exception {
    tooStrong();
    backToNormal();
    assertEquals("returned", alarms().at("/alarms/0/state").asText());
    post(HIGH + "/acknowledge", KIM);
    assertEquals(0, alarms().get("alarms").size());
    JsonNode all = TestClient.json(server.client().get("/api/v1/alarms?all=true"));
    assertEquals("normal", all.at("/alarms/0/state").asText());
  }

  @Test
  void shelvesForAWhileAndRaisesAgainAfterwards() throws Exception {
    tooStrong();
    JsonNode shelved = post(HIGH + "/shelve", "{\"who\":\"Kim\",\"note\":\"flush\",\"minutes\":2}");
    assertEquals("flush", shelved.at("/shelved/note").asText());
    assertFalse(shelved.get("needs_answer").asBoolean());
    assertEquals(0, alarms().get("needs_answer").asInt());
    server.nursery().indicate(FixtureNursery.LINE, 2.86, 25);
    server.pass(121);
    assertEquals("unacknowledged", alarms().at("/alarms/0/state").asText());
    post(HIGH + "/shelve", "{\"who\":\"Kim\",\"minutes\":60}");
    assertEquals("unacknowledged", post(HIGH + "/unshelve", KIM).get("state").asText());
  }

  @Test
  void takesOutOfServiceAndPutsBack() throws Exception {
    tooStrong();
    JsonNode out = post(HIGH + "/out-of-service", "{\"who\":\"Kim\",\"note\":\"repair\"}");
    assertEquals("repair", out.at("/out_of_service/note").asText());
    assertTrue(post(HIGH + "/in-service", KIM).get("needs_answer").asBoolean());
  }

  @Test
  void refusesWhatMakesNoSense() throws Exception {
    tooStrong();
    TestClient.problem(404, server.client().post("/api/v1/alarms/pond/no-data/acknowledge", KIM));
    TestClient.problem(404, server.client().post("/api/v1/alarms/%2e%2e/x/acknowledge", KIM));
    TestClient.problem(422, server.client().post(HIGH + "/acknowledge", "{}"));
    TestClient.problem(
        422, server.client().post(HIGH + "/acknowledge", "{\"who\":\"" + "x".repeat(81) + "\"}"));
    TestClient.problem(400, server.client().post(HIGH + "/acknowledge", "{\"who\":"));
    TestClient.problem(
        413,
        server.client().post(HIGH + "/acknowledge", "{\"who\":\"" + "x".repeat(70_000) + "\"}"));
    for (String minutes : new String[] {"0", "10081", "1.5", "null"}) {
      TestClient.problem(
          422,
          server.client().post(HIGH + "/shelve", "{\"who\":\"Kim\",\"minutes\":" + minutes + "}"));
    }
    assertEquals("unacknowledged", alarms().at("/alarms/0/state").asText());
  }

  @Test
  void putsWhatNeedsAnAnswerFirst() throws Exception {
    server.nursery().miss(FixtureNursery.TANK, Missing.Cause.CABLE_PULLED, "plug it in");
    server.pass(61);
    post("/api/v1/alarms/tank/no-data/acknowledge", KIM);
    tooStrong();
    assertEquals("line/conductivity-high", alarms().at("/alarms/0/id").asText());
    assertEquals("tank/no-data", alarms().at("/alarms/1/id").asText());
  }

  @Test
  void drawsTheBandThatHolds() throws Exception {
    JsonNode band = TestClient.json(server.client().get("/api/v1/points/line")).get("band");
    assertEquals("1.2", band.get("low").asText());
    assertEquals("2.4", band.get("high_total").asText());
    assertEquals("configured", band.get("why").asText());
    assertTrue(TestClient.json(server.client().get("/api/v1/points/tank")).get("band").isNull());
  }

  @Test
  void letsTheLimitsFollowWhatIsFed() throws Exception {
    JsonNode fed =
        post(
            "/api/v1/feeding",
            "{\"who\":\"Kim\",\"point\":\"line\",\"what\":\"strength\",\"strength\":\"growing-on\"}");
    assertEquals("1.35", fed.at("/band/low").asText());
    assertEquals("Kim said so", fed.get("why").asText());
    server.nursery().indicate(FixtureNursery.LINE, 1.95, 25);
    server.pass(200);
    assertFalse(
        alarms().toString().contains("conductivity-high"),
        "what was turned on has not arrived yet");
    server.nursery().indicate(FixtureNursery.LINE, 1.95, 25);
    server.pass(85);
    server.nursery().indicate(FixtureNursery.LINE, 1.95, 25);
    server.pass(85);
    JsonNode alarm = alarms().at("/alarms/0");
    assertEquals(
        "line: 1.95 mS/cm is above the high limit 1.65 mS/cm of Growing on",
        alarm.get("words").asText());
    post("/api/v1/feeding", "{\"who\":\"Kim\",\"point\":\"line\",\"what\":\"nothing\"}");
    server.pass(1);
    assertFalse(alarms().toString().contains("conductivity-high"), "nothing runs");
    TestClient.problem(
        422,
        server
            .client()
            .post(
                "/api/v1/feeding",
                "{\"who\":\"Kim\",\"point\":\"line\",\"what\":\"strength\",\"strength\":\"x\"}"));
    TestClient.problem(
        422,
        server
            .client()
            .post("/api/v1/feeding", "{\"who\":\"Kim\",\"point\":\"drain\",\"what\":\"nothing\"}"));
  }

  @Test
  void holdsPlainWaterAgainstTheSource() throws Exception {
    server.nursery().indicate(FixtureNursery.SOURCE, 0.46, 25);
    post("/api/v1/feeding", "{\"who\":\"Kim\",\"point\":\"line\",\"what\":\"plain-water\"}");
    JsonNode band = TestClient.json(server.client().get("/api/v1/points/line")).get("band");
    assertEquals("added", band.get("of").asText());
    assertEquals("0.15", band.get("high").asText());
    assertEquals(0.61, band.get("high_total").asDouble(), 0.001);
  }

  @Test
  void asksOnceAboutALevelThatComesBack() throws Exception {
    for (int visit = 0; visit < 4; visit++) {
      settle(visit % 2 == 0 ? 0.80 : 1.5);
    }
    assertTrue(question().isNull(), "twice is not often");
    settle(0.81);
    assertEquals(3, question().get("times").asInt());
    JsonNode named =
        post(
            "/api/v1/feeding/level",
            "{\"who\":\"Kim\",\"point\":\"line\",\"answer\":\"strength\",\"title\":\"Seedlings\"}");
    assertTrue(named.get("question").isNull());
    JsonNode choice = named.at("/choices/0");
    assertEquals("Seedlings", choice.get("title").asText());
    settle(1.5);
    settle(0.8);
    assertTrue(question().isNull(), "asked once");
    TestClient.problem(
        422,
        server
            .client()
            .post(
                "/api/v1/feeding/level",
                "{\"who\":\"Kim\",\"point\":\"line\",\"answer\":\"ignore\"}"));
  }

  private void settle(double milliSiemensPerCm) {
    for (int i = 0; i < 45; i++) {
      server.nursery().indicate(FixtureNursery.LINE, milliSiemensPerCm, 25);
      server.nursery().wait(java.time.Duration.ofSeconds(4));
    }
  }

  private JsonNode question() throws Exception {
    return TestClient.json(server.client().get("/api/v1/feeding"))
        .at("/points")
        .findParents("point")
        .stream()
        .filter(point -> point.get("point").asText().equals("line"))
        .findFirst()
        .orElseThrow()
        .get("question");
  }

  @Test
  void tellsTheStreamAndResumesWhereAPageWasCutOff() throws Exception {
    String last;
    try (SseReader stream = new SseReader(server.port())) {
      stream.event("snapshot");
      tooStrong();
      var told = stream.event("alarm");
      last = told.get("id");
      JsonNode event = TestClient.JSON.readTree(told.get("data"));
      assertEquals("raised", event.get("transition").asText());
      assertTrue(event.get("announces").asBoolean());
      assertEquals("unacknowledged", event.at("/alarm/state").asText());
    }
    post(HIGH + "/acknowledge", KIM);
    try (SseReader again = new SseReader(server.port(), "Last-Event-ID: " + last)) {
      var missed = again.next();
      while (missed != null && missed.get("event") == null) {
        missed = again.next();
      }
      assertEquals("alarm", missed == null ? "" : missed.get("event"));
      assertEquals(
          "acknowledged",
          TestClient.JSON
              .readTree(missed == null ? "" : missed.get("data"))
              .get("transition")
              .asText());
    }
    try (SseReader stranger = new SseReader(server.port(), "Last-Event-ID: 2-77")) {
      var first = stranger.next();
      assertEquals("reset", first == null ? "" : first.get("event"));
      stranger.event("snapshot");
    }
  }

  @Test
  void answersMetricsInTheFormatThatIsAskedFor() throws Exception {
    tooStrong();
    HttpResponse<String> plain = server.client().get("/metrics");
    assertEquals(
        "text/plain; version=0.0.4; charset=utf-8",
        plain.headers().firstValue("Content-Type").orElse(""));
    assertTrue(
        plain
            .body()
            .contains(
                "feedwitness_alarm_active{kind=\"conductivity-high\",priority=\"high\",subject=\"line\"} 1\n"),
        plain::body);
    assertFalse(plain.body().contains("# EOF"));
    HttpResponse<String> open =
        server
            .client()
            .get(
                "/metrics",
                "Accept",
                "application/openmetrics-text;version=1.0.0;q=0.8,text/plain;version=0.0.4;q=0.5");
    assertEquals(
        "application/openmetrics-text; version=1.0.0; charset=utf-8",
        open.headers().firstValue("Content-Type").orElse(""));
    assertTrue(open.body().endsWith("# EOF\n"));
    assertTrue(open.body().contains("feedwitness_samples_dropped_total 0\n"), open::body);
  }
}
