package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.sample.Missing;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Whole histories in and out, as the interface offers them. */
class DataRoutesTest {
  private static final String ROWS =
      "{\"unit\":\"µS/cm\",\"temperature_unit\":\"°C\",\"compensated\":\"to-25\",\"rows\":%s}";

  @RegisterExtension final RunningServer server = new RunningServer();

  @Test
  void exportsEverySampleWithWhatIsKnownOfIt() throws Exception {
    server.nursery().indicateUndated(FixtureNursery.LINE, 1.4, 22);
    server.nursery().indicate(FixtureNursery.LINE, 1.5, Double.NaN);
    server.nursery().wait(Duration.ofSeconds(1));
    server.nursery().miss(FixtureNursery.LINE, Missing.Cause.CABLE_PULLED, "line: plug it in");
    HttpResponse<String> answer =
        server.client().get("/api/v1/export?point=line&zone=Europe/London");
    assertEquals(200, answer.statusCode());
    assertEquals("text/csv", answer.headers().firstValue("Content-Type").orElse(""));
    List<String> lines = answer.body().lines().toList();
    assertEquals(String.join(",", CsvExport.COLUMNS), lines.get(0));
    String[] undated = lines.get(1).split(",", -1);
    assertEquals("", undated[0]);
    assertEquals("undated", undated[7]);
    assertEquals("0", undated[11]);
    String[] bare = lines.get(2).split(",", -1);
    assertEquals("2026-06-01T09:00:00.000+01:00", bare[0]);
    assertEquals("", bare[2]);
    assertEquals("1.5", bare[4]);
    assertEquals("temperature-missing", bare[7]);
    String[] missing = lines.get(3).split(",", -1);
    assertEquals("cable-pulled", missing[9]);
    assertEquals("", missing[4]);
    assertEquals(CsvExport.COLUMNS.size(), missing.length);
  }

  @Test
  void namesEveryParameterThatIsWrong() throws Exception {
    JsonNode problem =
        TestClient.problem(
            400,
            server
                .client()
                .get("/api/v1/export?point=pond&zone=Quarry&from=June&separator=pipe&color=red"));
    assertEquals(5, problem.path("errors").size(), problem::toString);
    TestClient.problem(400, server.client().get("/api/v1/export?decimal=comma"));
  }

  @Test
  void sendsABackupOnlyToWhoeverAsksForItOnPurpose() throws Exception {
    HttpResponse<String> answer = server.client().post("/api/v1/backup", "{}");
    assertEquals(200, answer.statusCode());
    assertEquals("feed", answer.body());
    assertEquals("application/zip", answer.headers().firstValue("Content-Type").orElse(""));
    assertEquals("4", answer.headers().firstValue("Content-Length").orElse(""));
    TestClient.problem(405, server.client().get("/api/v1/backup"));
    TestClient.problem(
        403, server.client().post("/api/v1/backup", "{}", "Origin", "http://stranger.example"));
    TestClient.problem(
        415, server.client().send("POST", "/api/v1/backup", BodyPublishers.noBody()));
  }

  @Test
  void takesRowsAndSaysWhatIsWrongWithOthers() throws Exception {
    String path = "/api/v1/points/drain/imports";
    HttpResponse<String> taken =
        server.client().post(path, ROWS.formatted("[[1748764800000,1413,21.5],[1,0,null]]"));
    assertEquals(200, taken.statusCode(), taken::body);
    assertEquals(2, TestClient.json(taken).path("taken").asInt());
    for (String rows :
        new String[] {"[]", "[[1]]", "[[1.5,1,1]]", "[[1,\"1\",1]]", "\"no\"", "[null]"}) {
      JsonNode problem = TestClient.problem(422, server.client().post(path, ROWS.formatted(rows)));
      assertTrue(problem.path("errors").toString().contains("rows"), problem::toString);
    }
    TestClient.problem(422, server.client().post(path, "{}"));
    TestClient.problem(422, server.client().post(path, ROWS.formatted("[[99999999999999,1,1]]")));
    TestClient.problem(
        404, server.client().post("/api/v1/points/pond/imports", ROWS.formatted("[[1,1,1]]")));
  }
}
