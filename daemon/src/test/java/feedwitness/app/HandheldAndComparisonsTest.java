package feedwitness.app;

import static feedwitness.app.CheckedNursery.PEN;
import static feedwitness.app.CheckedNursery.TANK;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Meters in the hand, samples beside fixed probes, thermometers: in the service. */
@Timeout(240)
class HandheldAndComparisonsTest {
  @TempDir Path folder;

  private static String sample(double milliSiemensPerCm, double celsius) {
    return "{\"who\":\"Kim\",\"against\":\"grab-sample\",\"name\":\"pen\",\"conductivity25_mS_cm\":%s,\"temperature_c\":%s}"
        .formatted(milliSiemensPerCm, celsius);
  }

  @Test
  void aMeterInTheHandIsCheckedAndStandsInTheSameLog() throws Exception {
    try (CheckedNursery house = new CheckedNursery(folder, CheckedNursery.SUNDAY, 30)) {
      house.begin(PEN);
      JsonNode low = house.type(1.41, 22);
      assertTrue(low.at("/now/open/results/0").asText().contains("0.01"), low::toString);
      JsonNode high = house.type(2.99, 22);
      assertEquals("fail", high.at("/now/open/verdict").asText(), high::toString);
      house.step(PEN, "cleaned");
      house.type(1.41, 22);
      house.type(2.99, 22);
      JsonNode refused =
          house.service.post(PEN + "/step", "{\"who\":\"Kim\",\"step\":\"adjust\"}", 409);
      assertTrue(
          refused.path("detail").asText().contains("adjust it by its own means"),
          refused::toString);
      house.step(PEN, "adjusted-by-instrument");
      house.type(1.41, 22);
      JsonNode left = house.type(2.77, 22);
      assertEquals("pass", left.at("/now/open/verdict").asText(), left::toString);
      house.step(PEN, "finish");

      JsonNode pen = house.service.get(PEN);
      assertEquals("pass", pen.at("/stand/verdict").asText(), pen::toString);
      assertTrue(pen.at("/stand/aside").isNull(), "a meter has no place to be kept apart from");
      String list = house.service.get("/api/v1/checks").path("subjects").toString();
      assertTrue(list.contains("\"kind\":\"meter\",\"name\":\"pen\""), list);
      Cli log = Cli.run("check", "log", "--config", house.configuration());
      assertTrue(log.out().contains(",meter/pen,Kim,meter-pen-20260607-1,as left,"), log.out());
      Cli standing = Cli.run("check", "status", "meter/pen", "--config", house.configuration());
      assertEquals(0, standing.code(), standing::err);
      assertTrue(standing.out().contains("last check 7 Jun 10:"), standing.out());
      JsonNode record = house.service.get("/api/v1/check-records/meter-pen-20260607-1");
      assertTrue(record.toString().contains("adjusted by the instrument itself"), record::toString);
    }
  }

  @Test
  void aSampleIsWorthWhatItsMeterIsWorth() throws Exception {
    try (CheckedNursery house = new CheckedNursery(folder, CheckedNursery.SUNDAY, 30)) {
      house.settleIn("tank");
      double reads =
          house.service.get("/api/v1/points/tank").path("conductivity25_mS_cm").asDouble();
      JsonNode unchecked = house.service.post(TANK + "/compare", sample(reads, 18), 409);
      assertTrue(
          unchecked.path("detail").asText().contains("check it in standards first"),
          unchecked::toString);
      house.checkThePen();
      JsonNode same = house.service.post(TANK + "/compare", sample(reads, 18), 201);
      assertTrue(same.path("words").asText().contains("with another meter (pen)"), same::toString);
      JsonNode off = house.service.post(TANK + "/compare", sample(reads * 1.12, 18), 201);
      assertEquals("fail", off.at("/now/compared/0/verdict").asText(), off::toString);
      assertEquals(2, off.at("/now/compared").size(), off::toString);
      assertEquals(2, off.at("/now/chart/points").size(), off::toString);

      JsonNode warm =
          house.service.post(
              TANK + "/compare",
              "{\"who\":\"Kim\",\"against\":\"thermometer\",\"name\":\"glass 7\",\"temperature_c\":45,\"accuracy_k\":0.1}",
              201);
      assertEquals("thermometer", warm.at("/now/compared/0/against").asText());
      assertEquals("fail", warm.at("/now/compared/0/verdict").asText(), warm::toString);
      assertTrue(warm.path("words").asText().contains(" K low"), warm::toString);

      for (String absurd : new String[] {sample(-1, 18), sample(90000, 18), sample(1.5, 400)}) {
        JsonNode refused = house.service.post(TANK + "/compare", absurd, 409);
        assertTrue(refused.path("detail").asText().contains("makes no sense"), refused::toString);
      }
      JsonNode meter = house.service.post(PEN + "/compare", sample(1.5, 18), 409);
      assertTrue(meter.path("detail").asText().contains("name the probe"), meter::toString);
      assertEquals(3, house.service.get(TANK).path("compared").size());
      house.begin(TANK);
      JsonNode away = house.service.post(TANK + "/compare", sample(reads, 18), 409);
      assertTrue(away.path("detail").asText().contains("no usable reading"), away::toString);
    }
  }
}
