package feedwitness.feed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** One bag, one strength: what a grower with no probe at all begins with. */
class OneBagTest {

  /** By the table of docs/feed.md: 1 g/L adds 0.92 mS/cm, so 1.04 needs 1.13 g/L. */
  @Test
  void findsTheGramsForAStrength() {
    MixSheet sheet = Forms.oneBag().sheet();
    assertEquals(677, sheet.weigh().get(0).grams(), 2);
    assertEquals(1.50, sheet.strength().total(), 0.002);
    assertEquals(1.04, sheet.strength().added(), 0.002);
    assertEquals(1.129 * 164, Forms.total(sheet, "N"), 0.5);
  }

  @Test
  void takesTheAddedPartAsWellAsTheTotal() {
    MixSheet added =
        Forms.oneBag()
            .with("goal", Map.of("added", "1.04 mS/cm", "frequency", "every watering"))
            .sheet();
    assertEquals(Forms.oneBag().sheet().weigh(), added.weigh());
  }

  @Test
  void needsMoreFeedInRainForTheSameTotal() {
    MixSheet rain = Forms.oneBag().with("water", Map.of("kind", "rain")).sheet();
    assertTrue(rain.weigh().get(0).grams() > 900, () -> rain.weigh().toString());
  }

  @Test
  void saysWhatAMeterWithAnotherHabitWillShow() {
    MixSheet sheet = Forms.oneBag().sheet();
    double raw = sheet.steps().get(1).atTank();
    assertEquals(raw / (1 - 0.02 * 11), sheet.meter().shown(), 1e-9);
    assertEquals(
        "1.53 mS/cm at 14 °C, compensating 2 %/K (this feed: 1.85 %/K)", sheet.meter().text());
    assertEquals(
        100 * (1 - raw / sheet.strength().total()) / 11,
        sheet.meter().feedPercentPerKelvin(),
        0.01);
    MixSheet salts =
        Forms.oneBag().with("meter", Map.of("unit", "ppm 500", "percent-per-kelvin", 2)).sheet();
    assertEquals(500 * sheet.meter().shown(), salts.meter().shown(), 1e-9);
    assertTrue(salts.meter().text().contains("ppm (factor 500)"));
    MixSheet uncompensated =
        Forms.oneBag().with("meter", Map.of("unit", "µS/cm", "compensates", "no")).sheet();
    assertEquals(1000 * raw, uncompensated.meter().shown(), 1e-6);
  }

  @Test
  void showsUreaAsWhatConductivityCannotSee() {
    MixSheet sheet = Forms.oneBag().sheet();
    assertEquals(100 * 5.1 / 16.4, sheet.strength().ureaPercent(), 0.1);
    assertFalse(Forms.line(sheet, "urea-N").conducts());
    assertTrue(Forms.says(sheet.notes(), "31 % of the feed's nitrogen is urea"));
    assertTrue(Forms.says(sheet.cautions(), "urea, which conductivity cannot see"));
    MixSheet more =
        Forms.oneBag()
            .only(Map.of("product", "house-feed", "rate", "1 g/L"))
            .use(Map.of("product", "urea", "rate", "1 g/L"))
            .with("goal", Map.of("frequency", "weekly"))
            .sheet();
    MixSheet less =
        Forms.oneBag()
            .only(Map.of("product", "house-feed", "rate", "1 g/L"))
            .with("goal", Map.of("frequency", "weekly"))
            .sheet();
    assertEquals(less.strength().total(), more.strength().total(), 0.005);
    assertEquals(466, Forms.total(more, "urea-N") - Forms.total(less, "urea-N"), 1);
  }

  @Test
  void servesPotsBySize() {
    MixSheet sheet =
        Forms.oneBag().with("make", Map.of("pots", 120, "pot", "3 L", "scale", "1 g")).sheet();
    assertEquals(72, sheet.volume().litres(), 1e-9);
    assertTrue(Forms.says(sheet.notes(), "a fifth of the pot's volume"));
    MixSheet known = Forms.oneBag().with("make", Map.of("pots", 120, "per-pot", "0.5 L")).sheet();
    assertEquals(60, known.volume().litres(), 1e-9);
  }

  @Test
  void countsLevelSpoonsForAHouseholdScale() {
    MixSheet sheet =
        Forms.oneBag()
            .only(Map.of("product", "house-feed", "spoon", "4.8 g"))
            .with("make", Map.of("volume", "10 L"))
            .sheet();
    MixSheet.Weighing weighing = sheet.weigh().get(0);
    assertEquals(2.25, weighing.spoons());
    assertEquals(2.25 * 4.8, weighing.grams(), 1e-9);
    assertTrue(weighing.text().startsWith("2.25 level spoons"), weighing::text);
    assertTrue(sheet.strength().total() < 1.5);
  }

  @Test
  void saysWhenTheScaleIsTooCoarse() {
    MixSheet sheet = Forms.oneBag().with("make", Map.of("volume", "1 L", "scale", "1 g")).sheet();
    assertTrue(Forms.says(sheet.notes(), "1.13 g is too little for this scale"));
  }

  @Test
  void warnsWhenLittleOfTheStrengthIsFeed() {
    MixSheet sheet =
        Forms.oneBag()
            .with("goal", Map.of("strength", "0.60 mS/cm", "frequency", "twice a week"))
            .sheet();
    assertTrue(Forms.says(sheet.notes(), "only 0.14 of 0.60 mS/cm is feed"));
    assertEquals("twice a week", sheet.frequency());
  }

  @Test
  void showsAmericanAndImperialMeasures() {
    MixSheet us =
        Forms.oneBag().with("units", "us").with("make", Map.of("volume", "100 US gal")).sheet();
    assertEquals(378.5, us.volume().litres(), 0.1);
    assertEquals("100 US gal of feed", us.volume().text());
    assertTrue(us.meter().text().contains(" at 68 °F"), us.meter()::text);
    assertTrue(us.weigh().get(0).text().endsWith(" oz"), us.weigh().get(0)::text);
    MixSheet imperial =
        Forms.oneBag()
            .with("units", "imperial")
            .with("make", Map.of("volume", "132 imp gal"))
            .sheet();
    assertTrue(imperial.weigh().get(0).text().startsWith("1 lb 7"), imperial.weigh().get(0)::text);
  }

  @Test
  void drawsStrengthAgainstGrams() {
    MixSheet sheet = Forms.oneBag().sheet();
    assertEquals(0, sheet.curve().get(0).gramsPerLitre());
    assertEquals(0.46, sheet.curve().get(0).strength(), 1e-9);
    assertEquals(1.50, sheet.curve().get(10).strength(), 0.002);
  }

  @Test
  void alwaysCautions() {
    MixSheet sheet = Forms.oneBag().sheet();
    for (String words :
        new String[] {"Label rates", "dry or wilted", "burn leaves", "cannot tell", "interlock"}) {
      assertTrue(Forms.says(sheet.cautions(), words), words);
    }
    MixSheet salts = Forms.salts(Map.of("K", 100), "potassium-nitrate").sheet();
    assertTrue(Forms.says(salts.cautions(), "oxidisers"));
    assertFalse(Forms.says(sheet.cautions(), "Acid into water"));
  }
}
