package feedwitness.app;

import static feedwitness.app.CheckedNursery.TANK;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A probe that was forgotten in a beaker, or lifted into one without a word: in the service. */
@Timeout(240)
class ProbeAwayTest {
  private static final String POINT = "/api/v1/points/tank";

  @TempDir Path folder;

  private static String log(CheckedNursery house) {
    return Cli.run("check", "log", "--config", house.configuration()).out();
  }

  private static boolean flagged(JsonNode point, String flag) {
    return point.path("flags").toString().contains("\"" + flag + "\"");
  }

  private static void measure(CheckedNursery house, String standard) throws Exception {
    int before = house.service.get(TANK).at("/open/results").size();
    house.nursery.begin("tank in-standard +40m " + standard);
    house.step(TANK, "rinsed");
    house.step(TANK, "immersed");
    house.service.await(TANK, now -> now.at("/open/results").size() > before);
  }

  @Test
  void aProbePutBackWithoutAWordCountsAgainAsSoonAsItReadsLikeTheTank() throws Exception {
    try (CheckedNursery house = new CheckedNursery(folder, CheckedNursery.SUNDAY, 30)) {
      house.settleIn("tank");
      house.begin(TANK);
      measure(house, "1.413mS/cm");
      measure(house, "2.77mS/cm");
      house.step(TANK, "finish");
      assertEquals("it is being checked", house.service.get(TANK).at("/stand/aside").asText());
      assertTrue(flagged(house.service.get(POINT), "in-beaker"), "still in the beaker");

      house.nursery.begin("tank in-standard +5s 2.77mS/cm");
      house.service.await(TANK, now -> now.at("/stand/aside").isNull());
      house.service.await(POINT, now -> !flagged(now, "in-beaker"));
      assertTrue(log(house).matches("(?s).*probe-returned[^\\n]* before the check.*"), log(house));
    }
  }

  @Test
  void aForgottenProbeCountsAgainAfterAnHourWithANote() throws Exception {
    try (CheckedNursery house = new CheckedNursery(folder, CheckedNursery.SUNDAY, 240)) {
      house.settleIn("tank");
      house.nursery.begin("tank in-standard +10h 12.88mS/cm");
      house.begin(TANK);
      house.step(TANK, "abandon");
      house.service.await(POINT, now -> flagged(now, "in-beaker"));
      house.service.await(TANK, now -> now.at("/stand/aside").isNull(), 900);
      house.service.await(POINT, now -> !flagged(now, "in-beaker"));
      String log = log(house);
      assertTrue(log.contains("60 minutes after the check tank reads 12."), log);
      assertTrue(log.contains("look whether it is"), log);
    }
  }

  @Test
  void aProbeLiftedIntoABucketWithoutAWordIsOutOfPlace() throws Exception {
    try (CheckedNursery house = new CheckedNursery(folder, CheckedNursery.SUNDAY, 30)) {
      house.settleIn("tank");
      house.nursery.begin("tank in-air +30m");
      house.service.await(POINT, now -> now.path("conductivity25_mS_cm").asDouble(9) < 0.05);
      house.nursery.begin("tank in-standard +14m 2.77mS/cm");
      house.nursery.begin("tank in-air +4m");
      JsonNode away = house.service.await(TANK, now -> !now.at("/stand/out_of_place").isNull());
      assertTrue(
          away.at("/stand/out_of_place").asText().contains("went through air and now reads"),
          away::toString);
      house.service.await(POINT, now -> flagged(now, "out-of-place"));
      house.service.await(
          "/api/v1/alarms", now -> now.toString().contains("Probe out of its place"));

      house.service.await(TANK, now -> now.at("/stand/out_of_place").isNull());
      house.service.await(POINT, now -> !flagged(now, "out-of-place"));
      assertTrue(log(house).contains(",probe-out-of-place,"), log(house));
      JsonNode course =
          house.service.get(
              POINT + "/measurements?from=2026-06-07T09:00:00Z&to=2026-06-07T12:00:00Z&points=2");
      assertTrue(course.toString().contains("out-of-place"), course::toString);
    }
  }
}
