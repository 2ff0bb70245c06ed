package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.simulate.Wire;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** From the virtual nursery's pseudo-terminals to HTTP: the main job, whole. */
@Timeout(120)
class ServiceOnNurseryTest {
  private static final Instant TUESDAY = Instant.parse("2026-06-02T09:00:00Z");

  @TempDir Path folder;
  private NurseryUnderTest nursery;

  @BeforeEach
  void openNursery() throws Exception {
    nursery = NurseryUnderTest.open(folder, TUESDAY, 10);
  }

  @AfterEach
  void closeNursery() {
    nursery.close();
  }

  private ServiceUnderTest start() throws Exception {
    return nursery.start(
        """
        [[point]]
        name = "line"
        title = "Glasshouse line"
        place = "line"
        port = "{bus}"
        profile = "modbus-scaled"
        unit = 12
        compensation = "linear"
        [[point]]
        name = "tank"
        title = "Mixing tank"
        place = "tank"
        port = "{bus}"
        profile = "modbus-float"
        unit = 11
        compensation = "linear"
        [[point]]
        name = "source"
        title = "Borehole"
        place = "source"
        port = "{source}"
        profile = "pushed-csv"
        compensation = "iso7888"
        [[point]]
        name = "drain"
        title = "Run-off"
        place = "drain"
        compensation = "linear"
        """);
  }

  @Test
  void readsAllProbesAndShowsTheStrengthOfTheSource() throws Exception {
    try (ServiceUnderTest service = start()) {
      for (String point : new String[] {"line", "tank", "source"}) {
        JsonNode status =
            service.await(
                "/api/v1/points/" + point, p -> p.path("state").asText().equals("reading"));
        assertTrue(status.path("conductivity25_mS_cm").asDouble() > 0.2, status::toString);
      }
      // The nursery's borehole has 0.46 mS/cm; its probe may be off by 2 %, ISO 7888 by 1.6 %.
      JsonNode source = service.get("/api/v1/points/source");
      assertEquals(0.46, source.path("conductivity25_mS_cm").asDouble(), 0.02);
    }
  }

  @Test
  void keepsRunningThroughAPulledCableAndSaysSo() throws Exception {
    try (ServiceUnderTest service = start()) {
      String line = "/api/v1/points/line";
      service.await(line, p -> p.path("state").asText().equals("reading"));
      nursery.itself().unplug(Wire.BUS);
      JsonNode missing = service.await(line, p -> p.path("state").asText().equals("missing"));
      assertEquals("cable-pulled", missing.path("missing").path("cause").asText());
      assertTrue(missing.path("conductivity25_mS_cm").asDouble() > 0.2, "the last value stays");
      service.await("/api/v1/points/source", p -> p.path("state").asText().equals("reading"));
      nursery.itself().replug(Wire.BUS);
      service.await(line, p -> p.path("state").asText().equals("reading"));
    }
  }

  @Test
  void keepsHistoryOverARestart() throws Exception {
    String firstBoot;
    try (ServiceUnderTest service = start()) {
      firstBoot =
          service
              .await("/api/v1/points/source", p -> p.path("state").asText().equals("reading"))
              .path("time")
              .asText();
    }
    try (ServiceUnderTest service = start()) {
      assertEquals(2, service.get("/health").path("boot").asInt());
      JsonNode course =
          service.get(
              "/api/v1/points/source/measurements?from="
                  + TUESDAY
                  + "&to="
                  + nursery.clock().wall().plusSeconds(600)
                  + "&points=5000");
      boolean kept = false;
      for (JsonNode each : course.path("measurements")) {
        kept |= each.path("time").asText().equals(firstBoot);
      }
      assertTrue(kept, () -> firstBoot + " is not in " + course);
    }
  }

  @Test
  void takesAHandReadingDownTheSamePipeline() throws Exception {
    try (ServiceUnderTest service = start()) {
      JsonNode drain =
          service.post(
              "/api/v1/points/drain/readings",
              "{\"conductivity\": 1850, \"unit\": \"µS/cm\", \"temperature\": 20,"
                  + " \"temperature_unit\": \"°C\", \"compensated\": \"not-at-all\"}",
              201);
      assertEquals("typed", drain.path("origin").asText());
      assertEquals(1.85 / (1 - 0.0188 * 5), drain.path("conductivity25_mS_cm").asDouble(), 1e-5);
      JsonNode refused =
          service.post(
              "/api/v1/points/drain/readings",
              "{\"conductivity\": 1413, \"unit\": \"mS/cm\", \"temperature\": null,"
                  + " \"temperature_unit\": \"°C\", \"compensated\": \"to-25\"}",
              422);
      assertTrue(refused.toString().contains("did you mean µS/cm"), refused::toString);
    }
  }
}
