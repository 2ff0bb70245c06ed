package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.sample.Missing;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class PointsTest {
  @RegisterExtension final RunningServer server = new RunningServer();

  private JsonNode point(String name) throws Exception {
    return TestClient.json(server.client().get("/api/v1/points/" + name));
  }

  @Test
  void showsTheLastReadingWithUnitsInTheNames() throws Exception {
    server.nursery().indicate(FixtureNursery.LINE, 1.4, 21.456);
    server.nursery().wait(Duration.ofMillis(2500));

    JsonNode line = point("line");

    // 1.4 / (1 + 0.0188 (21.456 - 25)) = 1.499950...
    assertEquals("1.49994", line.get("conductivity25_mS_cm").asText());
    assertEquals("1.4", line.get("conductivity_mS_cm").asText());
    assertEquals("21.456", line.get("temperature_C").asText());
    assertEquals("2026-06-01T08:00:00.000Z", line.get("time").asText());
    assertEquals(2.5, line.get("age_s").asDouble());
    assertEquals("reading", line.get("state").asText());
    assertEquals("good", line.get("quality").asText());
    assertEquals("probe", line.get("origin").asText());
    assertEquals("3-1", line.get("id").asText());
    assertTrue(line.get("missing").isNull());
    assertEquals("linear 1.88 %/K at 25 °C", line.at("/basis/compensation").asText());
    assertEquals("/dev/serial/by-id/usb-line", line.at("/probe/link").asText());
    assertEquals(0, line.at("/probe/unit").asInt());
  }

  @Test
  void showsTwiceTheStandardUncertainty() throws Exception {
    double standard =
        server
            .nursery()
            .indicate(FixtureNursery.LINE, 1.4, 21.5)
            .standardUncertaintyMilliSiemensPerCm();
    assertEquals(2 * standard, point("line").get("uncertainty_mS_cm").asDouble(), 1e-6);
  }

  @Test
  void writesNoMoreDigitsThanAnInstrumentHas() throws Exception {
    server.nursery().indicate(FixtureNursery.SOURCE, 1 / 3.0, 0.1 + 0.2);
    JsonNode source = point("source");
    assertEquals("0.333333", source.get("conductivity_mS_cm").asText());
    assertEquals("0.3", source.get("temperature_C").asText());
  }

  @Test
  void keepsTheLastReadingInViewWhileTheProbeIsGone() throws Exception {
    server.nursery().indicate(FixtureNursery.TANK, 1.5, 20);
    server.nursery().wait(Duration.ofSeconds(30));
    server
        .nursery()
        .miss(FixtureNursery.TANK, Missing.Cause.CABLE_PULLED, "tank: plug the cable in again");

    JsonNode tank = point("tank");

    assertEquals("missing", tank.get("state").asText());
    assertEquals("bad", tank.get("quality").asText());
    assertEquals("missing", tank.at("/flags/0").asText());
    assertEquals("no reading", tank.at("/flag_words/0").asText());
    assertEquals("1.5365", tank.get("conductivity_mS_cm").asText());
    assertEquals(30, tank.get("age_s").asInt());
    assertEquals("3-2", tank.get("id").asText());
    assertEquals("cable-pulled", tank.at("/missing/cause").asText());
    assertEquals("cable pulled or device gone", tank.at("/missing/words").asText());
    assertEquals("tank: plug the cable in again", tank.at("/missing/detail").asText());
    assertEquals("2026-06-01T08:00:00.000Z", tank.at("/missing/since").asText());
    assertEquals("slope 1.023, offset 0.002 mS/cm", tank.at("/basis/calibration").asText());
  }

  @Test
  void waitsForTheFirstReadingWithNothingButNulls() throws Exception {
    JsonNode drain = point("drain");
    assertEquals("waiting", drain.get("state").asText());
    assertEquals("unknown", drain.get("quality").asText());
    for (String field :
        new String[] {
          "probe",
          "conductivity25_mS_cm",
          "conductivity_mS_cm",
          "uncertainty_mS_cm",
          "temperature_C",
          "time",
          "age_s",
          "origin",
          "id",
          "missing",
          "basis"
        }) {
      assertTrue(drain.get(field).isNull(), field);
    }
    assertEquals(0, drain.get("flags").size());
  }

  @Test
  void writesAnUnknownNumberAsNull() throws Exception {
    server.nursery().indicate(FixtureNursery.LINE, 1.4, Double.NaN);
    JsonNode line = point("line");
    assertTrue(line.get("conductivity25_mS_cm").isNull());
    assertTrue(line.get("temperature_C").isNull());
    assertEquals("temperature-missing", line.at("/flags/0").asText());
  }

  @Test
  void givesAReadingWithoutATrustedClockNoDate() throws Exception {
    server.nursery().indicateUndated(FixtureNursery.LINE, 1.4, 22);
    JsonNode line = point("line");
    assertTrue(line.get("time").isNull());
    assertTrue(line.get("age_s").isNull());
    assertEquals("undated", line.at("/flags/0").asText());
  }

  @Test
  void listsPointsInTheOrderOfTheConfiguration() throws Exception {
    JsonNode points = TestClient.json(server.client().get("/api/v1/points"));
    assertEquals(4, points.size());
    assertEquals("source", points.at("/0/name").asText());
    assertEquals("drain", points.at("/3/name").asText());
    assertEquals("Borehole", points.at("/0/title").asText());
  }

  @Test
  void namesThePointsThereAreWhenOneIsUnknown() throws Exception {
    JsonNode problem = TestClient.problem(404, server.client().get("/api/v1/points/pond"));
    assertEquals(
        "there is no measuring point 'pond'; there are: source, tank, line, drain",
        problem.get("detail").asText());
    TestClient.problem(404, server.client().get("/api/v1/points/POND%20"));
  }

  @Test
  void saysHowTheServiceIs() throws Exception {
    server.nursery().indicate(FixtureNursery.LINE, 1.4, 22);
    JsonNode well = TestClient.json(server.client().get("/health"));
    assertEquals("ok", well.get("status").asText());
    assertEquals("3", well.get("boot").asText());
    assertEquals(1, well.at("/durable_through/sequence").asInt());
    assertEquals("2026-06-01T08:00:00.000Z", well.at("/durable_through/synced_at").asText());

    server.nursery().inTrouble("disk: 12 MB free, below the floor of 50 MB; make room");
    JsonNode ill = TestClient.json(server.client().get("/health"));
    assertEquals("trouble", ill.get("status").asText());
    assertTrue(ill.at("/trouble/0").asText().startsWith("disk"));
  }

  @Test
  void saysWhereItIs() throws Exception {
    JsonNode site = TestClient.json(server.client().get("/api/v1/site"));
    assertEquals("Quarry End Nursery", site.get("name").asText());
    assertEquals("Europe/London", site.get("zone").asText());
  }
}
