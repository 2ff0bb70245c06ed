package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** What the interface says of feed lines, and what can be logged there. */
class FeedLinesTest {
  static final String SERVICED =
      "{\"who\":\"Kim\",\"change\":\"serviced\",\"note\":\"new check valve\"}";
  private static final String CHANGES = "/api/v1/feed-lines/glasshouse/changes";

  @RegisterExtension final RunningServer server = new RunningServer();

  private JsonNode line() throws Exception {
    return TestClient.json(server.client().get("/api/v1/feed-lines")).at("/feed_lines/0");
  }

  private JsonNode alarms() throws Exception {
    return TestClient.json(server.client().get("/api/v1/alarms")).get("alarms");
  }

  private static JsonNode alarm(JsonNode alarms, String id) {
    for (JsonNode alarm : alarms) {
      if (alarm.get("id").asText().equals(id)) {
        return alarm;
      }
    }
    return alarms.path("none");
  }

  @Test
  void tiesThePartsTogetherBeforeAnythingFlows() throws Exception {
    JsonNode line = line();
    assertEquals("learning", line.get("state").asText());
    assertEquals("injector", line.at("/mixer/kind").asText());
    assertEquals(80, line.at("/mixer/setting").asDouble());
    assertEquals("source line drain", String.join(" ", line.get("parts").findValuesAsText("role")));
    assertEquals("[1.5,1.95]", line.get("strengths_mS_cm").toString());
    assertTrue(line.get("expected_mS_cm").isNull() && line.get("open").isNull());
  }

  @Test
  void showsExpectedBesideMeasuredAndAlarmsWhenTheInjectorSags() throws Exception {
    server.water(14, 1.5);
    JsonNode usual = line();
    assertEquals("normal", usual.get("state").asText(), usual::toString);
    assertEquals(80, usual.get("ratio").asDouble(), 3);
    assertEquals("learnt", usual.get("expected_from").asText(), usual::toString);
    server.water(6, 1.32);
    JsonNode line = line();
    assertEquals("shifted", line.get("state").asText(), line::toString);
    assertEquals(1.5, line.get("expected_mS_cm").asDouble(), 0.03);
    assertTrue(line.get("measured_mS_cm").asDouble() < 1.36, line::toString);
    assertTrue(line.get("ratio").asDouble() > 90, line::toString);
    assertEquals("alarm", line.at("/open/stage").asText(), line::toString);
    assertEquals(3, line.at("/open/tests").size());
    assertFalse(line.at("/open/causes").isEmpty());
    JsonNode alarm = alarm(alarms(), "glasshouse/injector-drift");
    assertEquals("Glasshouse", alarm.path("subject_title").asText(), () -> "" + line);
    assertTrue(alarm.get("words").asText().contains("% less feed than normal"), alarm::toString);
    assertTrue(alarm.get("words").asText().contains("likeliest first"), alarm::toString);
    assertTrue(alarm.get("what_to_do").asText().contains("handheld"), alarm::toString);
    assertFalse(
        server
            .evidence()
            .evidence(feedwitness.ledger.EvidenceQuery.newest(10, "drift").about("glasshouse"))
            .isEmpty());
  }

  @Test
  void replaysWhatIsStored() throws Exception {
    server.water(14, 1.5);
    server.water(6, 1.32);
    String path = "/api/v1/feed-lines/glasshouse/replay";
    String told = server.client().get(path).body();
    assertTrue(told.startsWith("start,detected,size_percent,kind\n"), told);
    assertTrue(told.contains(",step\n"), told);
    assertTrue(server.client().get(path + "?all=true").body().contains(",learnt\n"));
    TestClient.problem(400, server.client().get(path + "?from=then"));
    TestClient.problem(400, server.client().get(path + "?until=then"));
    TestClient.problem(
        400, server.client().get(path + "?from=2026-06-02T00:00:00Z&to=2026-06-01T00:00:00Z"));
  }

  @Test
  void learnsAnewOnlyWhenAChangeIsLogged() throws Exception {
    server.water(14, 1.5);
    server.water(6, 1.32);
    JsonNode answer = TestClient.json(server.client().post(CHANGES, SERVICED));
    assertEquals("learning", answer.get("state").asText(), answer::toString);
    assertEquals("", answer.get("told").asText());
    JsonNode logged = answer.at("/log");
    assertTrue(logged.toString().contains("injector serviced: new check valve"), logged::toString);
    JsonNode alarm = alarm(alarms(), "glasshouse/injector-drift");
    assertFalse(alarm.path("active").asBoolean(), alarm::toString);
    String journal = server.client().get("/api/v1/journal?kind=note").body();
    assertTrue(journal.contains("injector serviced: new check valve"), journal);
  }

  @Test
  void refusesAChangeThatIsNoneAndALineThatIsNone() throws Exception {
    JsonNode none = TestClient.problem(422, server.client().post(CHANGES, "{\"who\":\"Kim\"}"));
    assertTrue(none.get("detail").asText().contains("serviced"), none::toString);
    JsonNode nowhere =
        TestClient.problem(404, server.client().post("/api/v1/feed-lines/pond/changes", SERVICED));
    assertTrue(nowhere.get("detail").asText().contains("glasshouse"), nowhere::toString);
  }
}
