package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A check in the whole service, at a probe of the virtual nursery. */
@Timeout(240)
class CheckServiceTest {
  private static final Instant SUNDAY = Instant.parse("2026-06-07T09:00:00Z");
  private static final int PACE = 30;
  private static final String TANK = "/api/v1/checks/probe/tank";

  @TempDir private Path folder;
  private NurseryUnderTest nursery;

  @BeforeEach
  void openNursery() throws Exception {
    nursery = NurseryUnderTest.open(folder, SUNDAY, PACE);
  }

  @AfterEach
  void closeNursery() {
    nursery.close();
  }

  private ServiceUnderTest start() throws Exception {
    return nursery.start(
        """
        [[point]]
        name = "tank"
        title = "Mixing tank"
        place = "tank"
        port = "{bus}"
        profile = "modbus-float"
        unit = 11
        compensation = "linear"
        conductivity-high = "2.2 mS/cm"
        [[alarm]]
        kind = "conductivity-high"
        on-delay = "0s"
        [[standard]]
        name = "low"
        solution = "KCl 0.01 mol/L"
        lot = "QE-A07"
        certificate-percent = 0.5
        [[standard]]
        name = "high"
        solution = "KCl 0.02 mol/L"
        lot = "QE-C11"
        certificate-percent = 0.5
        """);
  }

  private static String step(String step) {
    return "{\"who\":\"Kim\",\"step\":\"%s\",\"note\":\"soft brush\"}".formatted(step);
  }

  private static void begin(ServiceUnderTest service) throws Exception {
    service.post(
        TANK + "/begin",
        "{\"who\":\"Kim\",\"standards\":[\"low\",\"high\"],\"confirmed\":true}",
        201);
  }

  private void immerse(ServiceUnderTest service, String standard) throws Exception {
    nursery.itself().begin("tank in-standard +40m " + standard);
    service.post(TANK + "/step", step("rinsed"), 200);
    service.post(TANK + "/step", step("immersed"), 200);
  }

  private void measure(ServiceUnderTest service, String standard) throws Exception {
    int before = service.get(TANK).at("/open/results").size();
    immerse(service, standard);
    service.await(TANK, now -> now.at("/open/results").size() > before);
  }

  private JsonNode round(ServiceUnderTest service) throws Exception {
    measure(service, "1.413mS/cm");
    measure(service, "2.77mS/cm");
    return service.get(TANK);
  }

  private static boolean reads(JsonNode point) {
    return point.path("state").asText().equals("reading");
  }

  @Test
  void leadsFromAFailureOverCleaningAndAdjustmentToAPassAndQualifiesWhatWasMeasuredBefore()
      throws Exception {
    try (ServiceUnderTest service = start()) {
      nursery.itself().begin("tank adjust -6%");
      service.await("/api/v1/points/tank", CheckServiceTest::reads);
      Thread.sleep(1500);
      begin(service);
      JsonNode found = round(service);
      assertEquals("fail", found.at("/open/verdict").asText(), found::toString);
      JsonNode point = service.get("/api/v1/points/tank");
      assertTrue(point.path("flags").toString().contains("in-beaker"), point::toString);
      assertEquals(0, service.get("/api/v1/alarms").path("needs_answer").asInt());

      service.post(TANK + "/step", step("cleaned"), 200);
      JsonNode cleaned = round(service);
      assertEquals("fail", cleaned.at("/open/verdict").asText(), cleaned::toString);

      service.post(TANK + "/step", step("adjust"), 200);
      JsonNode left = round(service);
      assertEquals("pass", left.at("/open/verdict").asText(), left::toString);
      String id = left.at("/open/id").asText();
      assertEquals("tank-20260607-1", id);

      service.post(TANK + "/step", step("finish"), 200);
      service.post(TANK + "/step", step("returned"), 200);
      JsonNode done = service.get(TANK);
      assertEquals("pass", done.at("/stand/verdict").asText(), done::toString);
      assertEquals(1, done.at("/doubted").size(), done::toString);
      assertEquals(-6, done.at("/doubted/0/error_at_end").asDouble(), 1.5, done::toString);
      assertTrue(done.path("undoable").asBoolean());
      JsonNode record = service.get("/api/v1/check-records/" + id);
      assertTrue(record.toString().contains("lot QE-C11"), record::toString);
      assertTrue(record.toString().contains("as left"), record::toString);

      String at = found.at("/open/begun").asText();
      JsonNode course =
          service.get(
              "/api/v1/points/tank/measurements?from=2026-06-07T08:00:00Z&to=" + at + "&points=5");
      assertTrue(course.toString().contains("doubted"), course::toString);
    }
    try (ServiceUnderTest service = start()) {
      service.await(
          "/api/v1/points/tank/explain", e -> e.toString().contains("adjusted") || e.size() > 0);
      JsonNode kept = service.get(TANK);
      assertEquals(1, kept.at("/doubted").size());
      assertEquals("pass", kept.at("/stand/verdict").asText());
      service.post(TANK + "/step", step("undo"), 200);
      assertEquals(false, service.get(TANK).path("undoable").asBoolean());
    }
  }

  @Test
  void goesOnAfterARestartAndLetsNoTwoPeopleCheckOneProbe() throws Exception {
    try (ServiceUnderTest service = start()) {
      service.await("/api/v1/points/tank", CheckServiceTest::reads);
      begin(service);
      measure(service, "1.413mS/cm");
    }
    try (ServiceUnderTest service = start()) {
      JsonNode now = service.get(TANK);
      assertEquals(1, now.at("/open/results").size(), now::toString);
      String config = folder.resolve("feedwitness.toml").toString();
      Cli status = Cli.run("check", "status", "tank", "--config", config);
      assertEquals(0, status.code(), status::err);
      assertTrue(status.out().contains("now: rinse the probe"), status.out());
      assertEquals("rinse", now.at("/open/phase").asText());
      JsonNode second =
          service.post(
              TANK + "/begin", "{\"who\":\"Robin\",\"standards\":[\"low\",\"high\"]}", 409);
      assertTrue(
          second.path("detail").asText().contains("Kim has been checking"), second::toString);
      measure(service, "2.77mS/cm");
      Cli end = Cli.run("check", "finish", "tank", "--who", "Robin", "--config", config);
      assertEquals(0, end.code(), end::err);
      assertTrue(service.get(TANK).at("/open").isNull());
      Cli log = Cli.run("check", "log", "--config", config);
      assertTrue(log.out().contains(",as found,"), log.out());
      Cli wrong = Cli.run("check", "finish", "tank", "--config", config);
      assertEquals(1, wrong.code());
      assertTrue(wrong.err().contains("no check of tank is open"), wrong.err());
    }
  }

  @Test
  void saysInClearWordsWhatIsWrong() throws Exception {
    try (ServiceUnderTest service = start()) {
      service.await("/api/v1/points/tank", CheckServiceTest::reads);
      String begin = TANK + "/begin";
      assertTrue(
          service
              .post(begin, "{\"who\":\"Kim\",\"standards\":[\"strong\"]}", 409)
              .path("detail")
              .asText()
              .contains("there is no standard 'strong' on the shelf; there are: low, high"));
      assertTrue(
          service
              .post(begin, "{\"who\":\"Kim\",\"standards\":[\"low\"]}", 409)
              .toString()
              .contains("one standard cannot tell"));
      assertTrue(
          service
              .post(TANK + "/step", step("rinsed"), 409)
              .path("detail")
              .asText()
              .contains("no check of tank is open"));
      service.post(TANK + "/step", "{\"who\":\"Kim\",\"step\":\"dance\"}", 422);
      service.post("/api/v1/checks/probe/pond/step", step("rinsed"), 404);
      begin(service);
      immerse(service, "2.77mS/cm");
      JsonNode asked =
          service.await(TANK, now -> now.at("/open/phase").asText().equals("did-you-mean"));
      assertEquals(0, asked.at("/open/results").size());
      service.post(TANK + "/step", step("wrong-bottle"), 200);
      assertTrue(
          service
              .post(TANK + "/step", step("cleaned"), 409)
              .path("detail")
              .asText()
              .contains("as found"));
      service.post(TANK + "/step", step("abandon"), 200);
    }
  }
}
