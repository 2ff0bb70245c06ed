package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.engine.ProbeDesk.ProbeDraft;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class SetupTest {
  static final String HAND_TYPED =
      "{\"name\":\"bench2\",\"title\":\"Second bench\",\"place\":\"drain\",\"hand_typed\":true,"
          + "\"compensation\":\"linear\"}";
  static final String PROBE =
      "{\"name\":\"well\",\"title\":\"Well\",\"place\":\"source\",\"hand_typed\":false,"
          + "\"link\":\"tcp:127.0.0.1:4001\",\"profile\":\"line-push\",\"unit\":0,"
          + "\"conductivity_unit\":\"uS/cm\",\"compensates\":true,\"compensation\":\"iso7888\","
          + "\"percent_per_kelvin\":null}";

  @RegisterExtension final RunningServer server = new RunningServer();

  static List<String> faults(JsonNode problem) {
    List<String> fields = new ArrayList<>();
    problem.get("errors").forEach(error -> fields.add(error.get("field").asText()));
    return fields;
  }

  @Test
  void listsPortsWithWhatToDoAboutThem() throws Exception {
    JsonNode ports = TestClient.json(server.client().get("/api/v1/setup/ports"));
    assertEquals("/dev/serial/by-id/usb-tank", ports.at("/0/path").asText());
    assertTrue(ports.at("/0/usable").asBoolean());
    assertFalse(ports.at("/1/usable").asBoolean());
    assertTrue(ports.at("/1/remark").asText().contains("dialout"));
  }

  @Test
  void listsProfiles() throws Exception {
    JsonNode profiles = TestClient.json(server.client().get("/api/v1/setup/profiles"));
    assertEquals("line-push", profiles.at("/0/name").asText());
    assertFalse(profiles.at("/0/needs_unit").asBoolean());
    assertEquals("mS/cm", profiles.at("/0/conductivity_unit").asText());
  }

  @Test
  void letsListenBeforeAnythingIsSaved() throws Exception {
    HttpResponse<String> answer =
        server
            .client()
            .post(
                "/api/v1/setup/listen",
                "{\"link\":\"/dev/serial/by-id/usb-tank\",\"profile\":\"line-push\",\"unit\":0,"
                    + "\"seconds\":1}");
    assertEquals(200, answer.statusCode(), answer::body);
    JsonNode preview = TestClient.json(answer);
    assertEquals("", preview.get("trouble").asText());
    assertEquals("1.5 mS/cm", preview.at("/heard/0/verdict").asText());
    assertEquals("31 2e 35 0d 0a", preview.at("/heard/0/hex").asText());
  }

  @Test
  void namesEveryFieldThatKeepsItFromListening() throws Exception {
    JsonNode problem =
        TestClient.problem(
            422,
            server
                .client()
                .post(
                    "/api/v1/setup/listen",
                    "{\"link\":\"COM3\",\"unit\":248,\"seconds\":11,\"baud\":9600}"));
    assertEquals(List.of("link", "profile", "unit", "seconds", "baud"), faults(problem));
    assertEquals(
        "seconds must be a whole number from 1 to 10, not '11'",
        problem.at("/errors/3/message").asText());
  }

  @Test
  void savesAProbe() throws Exception {
    HttpResponse<String> answer = server.client().post("/api/v1/setup/points", PROBE);
    assertEquals(201, answer.statusCode(), answer::body);
    assertEquals("/api/v1/points/well", answer.headers().firstValue("Location").orElse(""));
    assertEquals(
        "/var/lib/feedwitness/generated.toml", TestClient.json(answer).get("file").asText());
    ProbeDraft draft = server.desk().saved().get(0);
    assertEquals("well", draft.name().text());
    assertEquals(MeasuringPoint.Place.SOURCE, draft.place());
    assertEquals("tcp:127.0.0.1:4001", draft.link());
    assertEquals("µS/cm", draft.conductivityUnit());
    assertTrue(draft.compensates());
    assertEquals(new CompensationChoice.Iso7888(), draft.compensation());
  }

  @Test
  void savesAPointForHandReadings() throws Exception {
    HttpResponse<String> answer = server.client().post("/api/v1/setup/points", HAND_TYPED);
    assertEquals(201, answer.statusCode(), answer::body);
    ProbeDraft draft = server.desk().saved().get(0);
    assertTrue(draft.handTyped());
    assertEquals("", draft.link());
    assertEquals(new CompensationChoice.Linear(1.88), draft.compensation());
  }

  @Test
  void namesEveryFieldOfADraftThatCannotBe() throws Exception {
    JsonNode problem =
        TestClient.problem(
            422,
            server
                .client()
                .post(
                    "/api/v1/setup/points",
                    "{\"name\":\"Tank 2\",\"title\":\"a\\nb\",\"place\":\"pond\",\"unit\":1.5,"
                        + "\"conductivity_unit\":\"ppm\",\"compensates\":\"yes\","
                        + "\"compensation\":\"guess\",\"percent_per_kelvin\":4}"));
    assertEquals(
        List.of(
            "name",
            "title",
            "place",
            "link",
            "profile",
            "unit",
            "conductivity_unit",
            "compensates",
            "percent_per_kelvin",
            "compensation"),
        faults(problem));
    assertEquals(
        "name 'Tank 2' is not 1 to 32 of a-z, 0-9, - and _, a letter first; for example tank-2",
        problem.at("/errors/0/message").asText());
    assertTrue(server.desk().saved().isEmpty());
  }

  @Test
  void passesOnWhatTheDeskRefuses() throws Exception {
    JsonNode problem =
        TestClient.problem(
            422,
            server.client().post("/api/v1/setup/points", HAND_TYPED.replace("bench2", "tank")));
    assertEquals(List.of("name"), faults(problem));
    assertEquals("name 'tank' is taken; choose another", problem.get("detail").asText());
  }
}
