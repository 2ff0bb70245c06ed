package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The feed sums over HTTP, as the page asks for them while someone types. */
class MixTest {
  static final String WATER =
      "\"water\":{\"calcium\":\"72 mg/L\",\"magnesium\":\"8.5 mg/L\",\"sodium\":\"11.5 mg/L\","
          + "\"chloride\":\"17.7 mg/L\",\"sulfate\":\"19.2 mg/L\",\"alkalinity\":\"3.9 mmol/L\","
          + "\"measured\":\"0.46 mS/cm\"}";
  static final String ONE_BAG =
      "{\"title\":\"Growing on\","
          + WATER
          + ",\"goal\":{\"strength\":\"1.50 mS/cm\",\"frequency\":\"every watering\"},"
          + "\"use\":[{\"product\":\"house-feed\"}],"
          + "\"make\":{\"volume\":600,\"temperature\":14,\"scale\":\"1 g\"},"
          + "\"meter\":{\"unit\":\"mS/cm\",\"compensates\":\"yes\",\"percent_per_kelvin\":2}}";
  static final String STOCKS =
      "{"
          + WATER
          + ",\"acid\":{\"kind\":\"nitric\",\"strength\":\"60 %\",\"density\":1.37},"
          + "\"goal\":{\"nutrients\":{\"N\":\"140 mg/L\",\"P\":25,\"K\":{\"want\":150,"
          + "\"priority\":1}},\"frequency\":\"weekly\"},"
          + "\"use\":[{\"product\":\"calcium-nitrate\"},{\"product\":\"KNO3\"},"
          + "{\"product\":\"monopotassium-phosphate\"}],\"make\":{\"per_pot\":\"0.4 L\"},"
          + "\"stock\":{\"volume\":\"20 L\",\"makes\":80,\"stocks\":2,\"coldest_night\":\"4 °C\"}}";

  static final String ASIDE =
      STOCKS.substring(0, STOCKS.length() - 1)
          + ",\"supplement\":{\"product\":\"magnesium-sulfate\",\"nutrient\":\"Mg\",\"adds\":20,"
          + "\"volume\":\"50 L\",\"pots\":30,\"untreated\":10,\"review\":\"2026-06-14\"},"
          + "\"fallback\":{\"product\":\"house-feed\",\"frequency\":\"weekly\",\"volume\":10,"
          + "\"granules\":{\"product\":\"six-month granules\",\"applied\":\"2026-03-01\","
          + "\"today\":\"2026-05-30\",\"longevity\":\"6 months\",\"at\":21,"
          + "\"pot_temperature\":\"16 °C\"}},"
          + "\"check\":{\"dilution\":{\"stock\":\"10 mL\",\"in\":\"1 L\",\"measured\":1.05,"
          + "\"of\":\"calcium\"},\"draw_down\":{\"drawn\":\"1.25 L\",\"delivered\":98}}}";

  @RegisterExtension final RunningServer server = new RunningServer();

  private JsonNode mix(String form) throws Exception {
    HttpResponse<String> answer = server.client().post("/api/v1/mix", form);
    assertEquals(200, answer.statusCode(), answer::body);
    return TestClient.json(answer);
  }

  @Test
  void weighsOneBagForAStrength() throws Exception {
    JsonNode answer = mix(ONE_BAG);
    assertTrue(answer.get("faults").isEmpty(), answer::toString);
    JsonNode sheet = answer.get("sheet");
    assertEquals(1.50, sheet.at("/strength/total").asDouble(), 0.002);
    assertEquals(677, sheet.at("/weigh/0/grams").asDouble(), 2);
    assertEquals("every watering", sheet.get("frequency").asText());
    assertTrue(sheet.at("/meter/text").asText().startsWith("1.53 mS/cm at 14 °C"));
    assertFalse(sheet.get("cautions").isEmpty());
  }

  @Test
  void keepsCalciumInAStockOfItsOwn() throws Exception {
    JsonNode sheet = mix(STOCKS).get("sheet");
    assertEquals("calcium stock", sheet.at("/weigh/0/stock").asText());
    assertEquals("sulfate-phosphate stock", sheet.at("/weigh/2/stock").asText());
    assertEquals(4000, sheet.at("/stocks/0/serves_pots").asDouble());
    assertEquals("nitric", sheet.at("/acid/kind").asText());
  }

  @Test
  void answersWhatIsAskedBesideTheMix() throws Exception {
    JsonNode answer = mix(ASIDE);
    assertTrue(answer.get("faults").isEmpty(), answer::toString);
    assertEquals(203, 1000 * answer.at("/supplement/grams_per_litre").asDouble(), 1);
    assertEquals(0.62, answer.at("/fallback/granules_left").asDouble(), 0.05);
    assertEquals(78.4, answer.at("/checks/1/found").asDouble(), 1e-9);
    JsonNode alone = mix("{\"check\":{\"draw_down\":{\"drawn\":\"1 L\",\"delivered\":\"81 L\"}}}");
    assertEquals(81, alone.at("/checks/0/found").asDouble(), 1e-9);
    assertTrue(alone.get("sheet").isNull());
  }

  @Test
  void namesEachFieldThatIsNotRightYetWithoutFailing() throws Exception {
    JsonNode answer =
        mix(
            "{\"water\":{\"measured\":\"0,46\"},\"goal\":{\"strength\":\"1413 mS/cm\"},"
                + "\"use\":[{\"product\":\"house-feed\"}],\"make\":{\"per_pot\":\"1 gal\"}}");
    List<String> fields = new ArrayList<>();
    answer.get("faults").forEach(fault -> fields.add(fault.get("field").asText()));
    assertEquals(
        List.of("water.measured", "goal.frequency", "goal.strength", "make.per_pot", "make"),
        fields);
    assertTrue(answer.at("/faults/2/reason").asText().endsWith("µS/cm?"), answer::toString);
    assertTrue(answer.get("sheet").isNull());
  }

  @Test
  void listsTheFertilizersOneMayChoose() throws Exception {
    JsonNode list = TestClient.json(server.client().get("/api/v1/fertilizers"));
    assertEquals("calcium-nitrate", list.at("/0/id").asText());
    assertEquals(15.55, sum(list.at("/0/percent"), "-N"), 0.01);
  }

  private static double sum(JsonNode percent, String ending) {
    double sum = 0;
    for (JsonNode each : percent) {
      sum += each.get("symbol").asText().endsWith(ending) ? each.get("percent").asDouble() : 0;
    }
    return sum;
  }
}
