package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.Octets;
import feedwitness.sample.Missing;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class ExplainTest {
  @RegisterExtension final RunningServer server = new RunningServer();

  private JsonNode explain(String query, int status) throws Exception {
    var answer = server.client().get("/api/v1/points/line/explain" + query);
    assertEquals(status, answer.statusCode(), answer.body());
    return TestClient.json(answer);
  }

  @Test
  void takesTheSampleInForceAtATimeApart() throws Exception {
    Measurement first =
        server.nursery().indicate(FixtureNursery.LINE, 1.4, 22, Octets.ofText("1.4,22"));
    server.nursery().wait(Duration.ofSeconds(10));
    server.nursery().indicate(FixtureNursery.LINE, 1.6, 22);
    JsonNode explained = explain("?at=2026-06-01T08:00:05Z", 200);
    assertEquals(first.stamp().id(), explained.path("id").asText());
    assertEquals("1.4,22", explained.path("messages").path(0).path("text").asText());
    assertEquals(first.basis().toText(), explained.path("basis").asText());
    assertEquals(7, explained.path("steps").size());
    double squares = 0;
    for (JsonNode line : explained.path("budget")) {
      squares += Math.pow(line.path("contribution_mS_cm").asDouble(), 2);
    }
    assertEquals(explained.path("uncertainty_mS_cm").asDouble(), 2 * Math.sqrt(squares), 1e-5);
    assertEquals(1.6, explain("", 200).path("conductivity_mS_cm").asDouble());
  }

  @Test
  void explainsWhyThereIsNoReading() throws Exception {
    server.nursery().miss(FixtureNursery.LINE, Missing.Cause.SILENT, "no answer from unit 12");
    JsonNode explained = explain("", 200);
    assertTrue(explained.path("conductivity25_mS_cm").isNull());
    assertEquals(0, explained.path("budget").size());
    assertTrue(explained.path("steps").toString().contains("no answer from unit 12"));
  }

  @Test
  void saysWhenThereIsNothingToExplain() throws Exception {
    JsonNode nothing = explain("?at=2026-05-01T00:00:00Z", 404);
    assertTrue(nothing.path("detail").asText().contains("in the 24 h before"), nothing::toString);
    assertTrue(explain("?at=soon", 400).path("detail").asText().contains("soon"));
    assertTrue(explain("?when=now", 400).path("detail").asText().contains("there is at"));
  }
}
