package feedwitness.feed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Products by their label, and the bag at hand. */
class OwnProductTest {
  private static Map<String, Object> bench(Object label, Object... more) {
    Map<String, Object> product = new HashMap<>();
    product.put("id", "bench-feed");
    product.put("title", "Bench Feed 13.7-5.3-21.1");
    product.put("label", label);
    for (int i = 0; i < more.length; i += 2) {
      product.put(String.valueOf(more[i]), more[i + 1]);
    }
    return product;
  }

  private static final Map<String, Object> LABEL =
      Map.of(
          "N",
          13.7,
          "nitrate-N",
          8.9,
          "ammonium-N",
          4.8,
          "P2O5",
          5.3,
          "K2O",
          21.1,
          "MgO",
          2.3,
          "SO3",
          9.1,
          "Fe",
          0.07);

  private static Forms rated(Object product) {
    return Forms.oneBag()
        .only(Map.of("product", "bench-feed", "rate", "1 g/L"))
        .with("goal", Map.of("frequency", "weekly"))
        .with("product", List.of(product));
  }

  @Test
  void readsALabelByWeight() {
    MixSheet sheet = rated(bench(LABEL, "chelated", List.of("Fe"))).sheet();
    assertEquals(137, Forms.total(sheet, "N"), 0.5);
    assertEquals(53 / 2.2914, Forms.total(sheet, "P"), 0.1);
    assertEquals(0.7, Forms.total(sheet, "Fe"), 0.01);
    assertTrue(Forms.says(sheet.notes(), "balances the charges of the label"));
  }

  @Test
  void readsALiquidByVolumeWithItsDensity() {
    MixSheet sheet =
        rated(
                bench(
                    Map.of("N", 6.1, "nitrate-N", 6.1, "K2O", 7.3),
                    "by",
                    "volume",
                    "density",
                    1.22))
            .sheet();
    assertEquals(61 / 1.22, Forms.total(sheet, "N"), 0.1);
    assertEquals(600 / 1.22, sheet.weigh().get(0).millilitres(), 1);
    assertTrue(sheet.weigh().get(0).text().contains("mL"), sheet.weigh().get(0)::text);
    rated(bench(Map.of("N", 6, "nitrate-N", 6), "by", "volume"))
        .refused("product[1].density", "the label is by volume");
  }

  @Test
  void takesElementsWhereTheLabelPrintsThem() {
    MixSheet oxide = rated(bench(Map.of("nitrate-N", 8, "P2O5", 5, "K2O", 21))).sheet();
    MixSheet element =
        rated(bench(Map.of("nitrate-N", 8, "P", 5 / 2.2914, "K", 21 / 1.2046))).sheet();
    assertEquals(Forms.total(oxide, "P"), Forms.total(element, "P"), 1e-3);
    assertEquals(oxide.strength().total(), element.strength().total(), 1e-6);
  }

  @Test
  void refusesALabelThatCannotBe() {
    rated(bench(Map.of("N", 16.4, "nitrate-N", 8.2, "ammonium-N", 3.1)))
        .refused("product[1].label.N", "more than its forms", "11.3 %", "urea-N?");
    rated(bench(Map.of("N", 10, "nitrate-N", 8.2, "ammonium-N", 3.1)))
        .refused("product[1].label.N", "less than its forms");
    rated(bench(Map.of("nitrate-N", 20, "P2O5", 52, "K2O", 34)))
        .refused("product[1].label.K2O", "add up to 106, more than 100");
    rated(bench(Map.of("nitrate-N", 108)))
        .refused("product[1].label.nitrate-N", "outside 0 to 100 %");
    rated(bench(Map.of("nitrate-N", 8, "P2O5", 5, "P", 2.2)))
        .refused("product[1].label.P2O5", "as oxide and as element");
  }

  @Test
  void saysWhatItAssumedOfNitrogenWithoutForms() {
    MixSheet sheet = rated(bench(Map.of("N", 14, "P2O5", 5, "K2O", 21))).sheet();
    assertTrue(Forms.says(sheet.notes(), "half nitrate, half ammonium"));
    MixSheet known =
        rated(bench(Map.of("N", 14, "nitrate-N", 7, "ammonium-N", 7, "P2O5", 5, "K2O", 21)))
            .sheet();
    assertEquals(known.strength().total(), sheet.strength().total(), 1e-9);
    assertTrue(sheet.strength().uncertainty() > 1.5 * known.strength().uncertainty());
  }

  @Test
  void fitsToTheBagAtHand() {
    Map<String, Object> sample = Map.of("rate", "1 g/L", "strength", "1.10 mS/cm");
    MixSheet fitted =
        rated(bench(LABEL, "measured", List.of(sample)))
            .with("water", Map.of("kind", "rain"))
            .sheet();
    assertEquals(1.10, fitted.strength().total(), 0.002);
    MixSheet label = rated(bench(LABEL)).with("water", Map.of("kind", "rain")).sheet();
    assertEquals(Forms.total(label, "N"), Forms.total(fitted, "N"), 1e-9);
    assertTrue(fitted.strength().uncertainty() < label.strength().uncertainty());
    assertTrue(Forms.says(fitted.notes(), "fitted to the bag at hand"));
  }

  @Test
  void asksToWeighAgainWhereTwoPointsDisagree() {
    Map<String, Object> one = Map.of("rate", "1 g/L", "strength", "1.10 mS/cm");
    Map<String, Object> two = Map.of("rate", "0.5 g/L", "strength", "0.70 mS/cm");
    MixSheet sheet = rated(bench(LABEL, "measured", List.of(one, two))).sheet();
    assertTrue(Forms.says(sheet.notes(), "weigh and measure once more"));
    rated(bench(LABEL, "measured", List.of(Map.of("rate", "1 g/L", "strength", "0.11 mS/cm"))))
        .refused("product[1].measured", "times what its label makes");
  }

  @Test
  void takesASaltOfLesserPurity() {
    MixSheet sheet = rated(Map.of("id", "bench-feed", "formula", "KNO3", "purity", "95 %")).sheet();
    assertEquals(0.95 * 386.7, Forms.total(sheet, "K"), 0.3);
  }
}
