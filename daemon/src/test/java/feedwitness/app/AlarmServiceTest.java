package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Alarms in the whole service, with its real store, over a restart. */
@Timeout(120)
class AlarmServiceTest {
  private static final String POINTS =
      """
      [[point]]
      name = "drain"
      place = "other"
      conductivity-high = "2.4 mS/cm"
      [[point]]
      name = "tank"
      place = "tank"
      port = "/dev/serial/by-id/not-there"
      profile = "pushed-csv"
      [[strength]]
      name = "heavy-feeders"
      conductivity = "3.0 mS/cm"
      tolerance = "0.3 mS/cm"
      [[alarm]]
      kind = "no-data"
      on-delay = "1s"
      [[alarm]]
      kind = "conductivity-high"
      on-delay = "0s"
      off-delay = "0s"
      """;
  private static final String KIM = "{\"who\":\"Kim\",\"note\":\"seen\"}";

  @TempDir private Path folder;

  private static String reading(double milliSiemensPerCm) {
    return "{\"conductivity\":%s,\"unit\":\"mS/cm\",\"compensated\":\"to-25\"}"
        .formatted(milliSiemensPerCm);
  }

  private static JsonNode alarm(JsonNode list, String id) {
    for (JsonNode alarm : list.get("alarms")) {
      if (alarm.get("id").asText().equals(id)) {
        return alarm;
      }
    }
    return list.path("none");
  }

  @Test
  void remembersAlarmsAnswersNotesAndFeedingAcrossARestart() throws Exception {
    JsonNode before;
    JsonNode feedBefore;
    try (ServiceUnderTest service = ServiceUnderTest.start(folder, POINTS)) {
      service.post("/api/v1/points/drain/readings", reading(2.9), 201);
      JsonNode list =
          service.await(
              "/api/v1/alarms",
              all ->
                  all.get("needs_answer").asInt() == 2
                      && !alarm(all, "tank/no-data").isMissingNode());
      assertTrue(
          alarm(list, "tank/no-data").get("words").asText().contains("no such port"),
          list::toString);
      service.post("/api/v1/alarms/tank/no-data/acknowledge", KIM, 200);
      service.post("/api/v1/journal", "{\"author\":\"Kim\",\"text\":\"cable ordered\"}", 201);
      before = service.get("/api/v1/alarms");
      feedBefore = service.await("/api/v1/journal", all -> all.get("entries").size() == 4);
    }
    try (ServiceUnderTest service = ServiceUnderTest.start(folder, POINTS)) {
      JsonNode after = service.get("/api/v1/alarms");
      for (String id : new String[] {"tank/no-data", "drain/conductivity-high"}) {
        assertEquals(alarm(before, id).get("state"), alarm(after, id).get("state"), id);
        assertEquals(alarm(before, id).get("raised"), alarm(after, id).get("raised"), id);
        assertEquals(alarm(before, id).get("answer"), alarm(after, id).get("answer"), id);
      }
      assertEquals(feedBefore, service.get("/api/v1/journal"));
      service.post(
          "/api/v1/feeding",
          "{\"who\":\"Kim\",\"point\":\"drain\",\"what\":\"strength\",\"strength\":\"heavy-feeders\"}",
          200);
    }
    try (ServiceUnderTest service = ServiceUnderTest.start(folder, POINTS)) {
      assertEquals(
          "heavy-feeders", service.get("/api/v1/feeding").at("/points/0/strength").asText());
      service.await(
          "/api/v1/alarms",
          all -> alarm(all, "drain/conductivity-high").path("state").asText().equals("returned"));
      JsonNode points = service.get("/api/v1/points");
      assertEquals("2.7", points.at("/0/band/low").asText());
    }
  }

  @Test
  void forgetsAlarmsThatWereConfiguredAway() throws Exception {
    try (ServiceUnderTest service = ServiceUnderTest.start(folder, POINTS)) {
      service.await("/api/v1/alarms", all -> !alarm(all, "tank/no-data").isMissingNode());
    }
    String off = POINTS + "[[alarm]]\nkind = \"no-data\"\npriority = \"off\"\n";
    try (ServiceUnderTest service = ServiceUnderTest.start(folder, off)) {
      assertTrue(alarm(service.get("/api/v1/alarms?all=true"), "tank/no-data").isMissingNode());
    }
  }
}
