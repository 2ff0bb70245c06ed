package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.sample.Missing;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CourseTest {
  private static final String LINE = "/api/v1/points/line/measurements";

  @RegisterExtension final RunningServer server = new RunningServer();

  private void fourMinutes() {
    server.nursery().indicate(FixtureNursery.LINE, 1.40, 25);
    server.nursery().wait(Duration.ofMinutes(1));
    server.nursery().indicate(FixtureNursery.LINE, 1.60, 25);
    server.nursery().wait(Duration.ofMinutes(2));
    server.nursery().miss(FixtureNursery.LINE, Missing.Cause.SILENT, "line: silent for 3 s");
    server.nursery().wait(Duration.ofMinutes(1));
  }

  @Test
  void showsTheLastHourUnlessAskedOtherwise() throws Exception {
    fourMinutes();
    JsonNode course = TestClient.json(server.client().get(LINE));
    assertEquals("line", course.get("point").asText());
    assertEquals("2026-06-01T07:04:00.000Z", course.get("from").asText());
    assertEquals("2026-06-01T08:04:00.000Z", course.get("to").asText());
    assertEquals(0, course.get("bucket_s").asInt());
    assertEquals(3, course.get("measurements").size());
    assertEquals("1.4", course.at("/measurements/0/conductivity25_mS_cm").asText());
    assertTrue(course.at("/measurements/2/conductivity25_mS_cm").isNull());
    assertEquals(1, course.at("/measurements/2/missing").asInt());
    assertEquals("missing", course.at("/measurements/2/flags/0").asText());
  }

  @Test
  void thinsToSoManyPointsAndLeavesGapsAsGaps() throws Exception {
    fourMinutes();
    JsonNode course =
        TestClient.json(
            server
                .client()
                .get(LINE + "?from=2026-06-01T10:00:00%2B02:00&to=2026-06-01T08:06:00Z&points=2"));
    assertEquals(180, course.get("bucket_s").asInt());
    assertEquals(2, course.get("measurements").size());
    JsonNode first = course.at("/measurements/0");
    assertEquals("1.5", first.get("conductivity25_mS_cm").asText());
    assertEquals("1.4", first.get("min_mS_cm").asText());
    assertEquals("1.6", first.get("max_mS_cm").asText());
    assertEquals(2, first.get("readings").asInt());
    JsonNode gap =
        TestClient.json(
            server.client().get(LINE + "?from=2026-06-01T09:00:00Z&to=2026-06-01T10:00:00Z"));
    assertEquals(0, gap.get("measurements").size());
  }

  @ParameterizedTest
  @CsvSource({
    "from=yesterday, from",
    "to=2026-06-01, to",
    "from=2026-06-01T10:00:00+02:00, from",
    "from=+999999999-01-01T00:00:00Z, from",
    "from=9999-06-01T00:00:00Z, from",
    "from=2026-06-01T09:00:00Z, from",
    "from=2026-06-01T07:00:00Z&to=2026-06-01T07:00:00Z, from",
    "points=0, points",
    "points=5001, points",
    "points=99999999999, points",
    "points=many, points",
    "points=, points",
    "points=5&points=6, points",
    "form=2026-06-01T07:00:00Z, form"
  })
  void namesTheParameterAtFault(String query, String field) throws Exception {
    JsonNode problem = TestClient.problem(400, server.client().get(LINE + "?" + query));
    assertEquals(List.of(field), SetupTest.faults(problem));
  }

  @Test
  void namesAllParametersAtFaultAtOnce() throws Exception {
    JsonNode problem = TestClient.problem(400, server.client().get(LINE + "?from=x&to=y&points=z"));
    assertEquals(List.of("to", "from", "points"), SetupTest.faults(problem));
  }

  @Test
  void hasNoCourseForAnUnknownPoint() throws Exception {
    TestClient.problem(404, server.client().get("/api/v1/points/pond/measurements"));
  }
}
