package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class TypedReadingTest {
  private static final String DRAIN = "/api/v1/points/drain/readings";

  @RegisterExtension final RunningServer server = new RunningServer();

  @Test
  void takesAReadingOffAHandheldMeter() throws Exception {
    HttpResponse<String> answer =
        server
            .client()
            .post(
                DRAIN,
                "{\"conductivity\":1930,\"unit\":\"uS/cm\",\"temperature\":68,"
                    + "\"temperature_unit\":\"°F\",\"compensated\":\"not-at-all\"}");
    assertEquals(201, answer.statusCode(), answer::body);
    JsonNode drain = TestClient.json(answer);
    assertEquals("typed", drain.get("origin").asText());
    assertEquals("1.93", drain.get("conductivity_mS_cm").asText());
    assertEquals("20", drain.get("temperature_C").asText());
    assertEquals("/api/v1/points/drain", answer.headers().firstValue("Location").orElse(""));
    assertEquals(1, server.nursery().points().stream().filter(p -> p.latest().isPresent()).count());
  }

  @Test
  void takesAReadingWithoutTemperature() throws Exception {
    HttpResponse<String> answer =
        server
            .client()
            .post(
                DRAIN,
                "{\"conductivity\":1.9,\"unit\":\"dS/m\",\"temperature\":null,"
                    + "\"temperature_unit\":\"°C\",\"compensated\":\"to-25\"}");
    assertEquals(201, answer.statusCode(), answer::body);
  }

  @Test
  void namesEveryFieldAtFault() throws Exception {
    JsonNode problem =
        TestClient.problem(
            422,
            server
                .client()
                .post(
                    DRAIN,
                    "{\"conductivity\":\"1.5\",\"unit\":\"ppm\",\"temperature\":20,"
                        + "\"compensated\":\"perhaps\",\"note\":\"after rain\"}"));
    assertEquals(
        List.of("conductivity", "unit", "compensated", "temperature_unit", "note"),
        SetupTest.faults(problem));
    assertEquals(
        "unit 'ppm' is no unit of conductivity; give one of µS/cm, mS/cm, dS/m, mS/m, S/m, CF",
        problem.at("/errors/1/message").asText());
  }

  @Test
  void refusesANumberTooLargeToBeOne() throws Exception {
    JsonNode problem =
        TestClient.problem(
            422,
            server
                .client()
                .post(
                    DRAIN,
                    "{\"conductivity\":1e999,\"unit\":\"mS/cm\",\"compensated\":\"to-25\"}"));
    assertEquals(List.of("conductivity"), SetupTest.faults(problem));
  }

  @Test
  void passesOnWhatThePipelineRefuses() throws Exception {
    JsonNode problem =
        TestClient.problem(
            422,
            server
                .client()
                .post(
                    DRAIN, "{\"conductivity\":1413,\"unit\":\"mS/cm\",\"compensated\":\"to-25\"}"));
    assertEquals(List.of("conductivity"), SetupTest.faults(problem));
    assertTrue(problem.get("detail").asText().contains("above the limit 200 mS/cm"));
  }

  @Test
  void takesNothingForAPointThatIsNotThere() throws Exception {
    TestClient.problem(404, server.client().post("/api/v1/points/pond/readings", "{}"));
  }
}
