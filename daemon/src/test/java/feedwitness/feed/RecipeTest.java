package feedwitness.feed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** Grams for nutrients: met where they can be, and honest where not. */
class RecipeTest {
  private static final String[] FOUR = {
    "calcium-nitrate", "potassium-nitrate", "monopotassium-phosphate", "magnesium-sulfate"
  };

  /**
   * By hand, in rain water: each nutrient has one salt that alone brings it, potassium after
   * phosphate. Ca 100/0.1854 = 539 g; P 30/0.2276 = 131.8 g with 37.9 mg/L K; K (150-37.9)/0.3867 =
   * 290 g; Mg 25/0.0986 = 253.5 g, all for 1000 L.
   */
  @Test
  void meetsWhatAGrowerWouldWorkOutByHand() {
    MixSheet sheet =
        Forms.salts(Map.of("Ca", "100 mg/L", "P", 30, "K", 150, "Mg", 25), FOUR).sheet();
    assertEquals(539, Forms.weighing(sheet, "calcium-nitrate").grams(), 1);
    assertEquals(131.8, Forms.weighing(sheet, "monopotassium-phosphate").grams(), 0.3);
    assertEquals(290, Forms.weighing(sheet, "potassium-nitrate").grams(), 1);
    assertEquals(253.5, Forms.weighing(sheet, "magnesium-sulfate").grams(), 0.5);
    assertTrue(sheet.binding().isEmpty(), () -> sheet.binding().toString());
  }

  @Test
  void takesOxidesForWhatTheyAre() {
    MixSheet sheet = Forms.salts(Map.of("P2O5", "68.74 mg/L", "K2O", 180.7), FOUR).sheet();
    assertEquals(30, Forms.total(sheet, "P"), 0.05);
    assertEquals(150, Forms.total(sheet, "K"), 0.1);
    assertEquals(68.74, Forms.line(sheet, "P").totalOxide(), 0.1);
  }

  @Test
  void countsWhatTheWaterBrings() {
    MixSheet sheet =
        Forms.salts(Map.of("Ca", 100), "calcium-nitrate").with("water", Forms.BOREHOLE).sheet();
    assertEquals(28 / 0.1854, Forms.weighing(sheet, "calcium-nitrate").grams(), 1);
  }

  @Test
  void saysWhenNoProductHoldsANutrient() {
    MixSheet sheet = Forms.salts(Map.of("Fe", 2, "K", 100), "potassium-nitrate").sheet();
    assertTrue(Forms.says(sheet.binding(), "Fe is 2 mg/L short of 2 mg/L: none of the chosen"));
  }

  @Test
  void saysWhichLimitBinds() {
    MixSheet sheet =
        Forms.salts(Map.of("K", 150))
            .use(Map.of("product", "potassium-nitrate", "most", "0.2 g/L"))
            .sheet();
    assertEquals(200, Forms.weighing(sheet, "potassium-nitrate").grams(), 0.1);
    assertTrue(
        Forms.says(
            sheet.binding(), "K is 72.7 mg/L short of 150 mg/L: potassium-nitrate is at its"),
        () -> sheet.binding().toString());
  }

  @Test
  void keepsACeilingAndSaysSo() {
    MixSheet sheet =
        Forms.salts(Map.of("Mg", 40, "S", Map.of("most", "30 mg/L")), "magnesium-sulfate").sheet();
    assertEquals(30, Forms.total(sheet, "S"), 0.05);
    assertTrue(
        Forms.says(sheet.binding(), "S is at its ceiling"), () -> sheet.binding().toString());
    assertTrue(Forms.says(sheet.binding(), "more magnesium-sulfate would bring too much S"));
  }

  @Test
  void givesWayWhereThePriorityIsLower() {
    Map<String, Object> first = Map.of("want", 150, "priority", 1);
    Map<String, Object> last = Map.of("want", 20, "priority", 3);
    MixSheet potassium =
        Forms.salts(Map.of("K", first, "nitrate-N", last), "potassium-nitrate").sheet();
    MixSheet nitrogen =
        Forms.salts(
                Map.of(
                    "K", Map.of("want", 150, "priority", 3),
                    "nitrate-N", Map.of("want", 20, "priority", 1)),
                "potassium-nitrate")
            .sheet();
    assertEquals(150, Forms.total(potassium, "K"), 0.5);
    assertEquals(20, Forms.total(nitrogen, "nitrate-N"), 0.1);
    assertTrue(Forms.says(potassium.binding(), "nitrate-N is 33.7 mg/L over 20"));
  }

  @Test
  void refusesACeilingThatTheWaterPasses() {
    Forms.salts(Map.of("Ca", Map.of("most", 50), "K", 100), "potassium-nitrate")
        .with("water", Forms.BOREHOLE)
        .refused("goal.nutrients.Ca", "the water alone brings 72 mg/L Ca");
  }

  @Test
  void scalesTheProportionsToAStrength() {
    Forms forms = Forms.salts(Map.of(), FOUR);
    MixSheet sheet =
        forms
            .with(
                "goal",
                Map.of(
                    "nutrients",
                    Map.of("Ca", 100, "P", 30, "K", 150, "Mg", 25),
                    "strength",
                    "1.0 mS/cm",
                    "frequency",
                    "every watering"))
            .sheet();
    assertEquals(1.0, sheet.strength().total(), 0.002);
    assertEquals(
        539.0 / 290,
        Forms.weighing(sheet, "calcium-nitrate").grams()
            / Forms.weighing(sheet, "potassium-nitrate").grams(),
        0.01);
    assertTrue(Forms.says(sheet.notes(), "scaled to it"));
  }
}
