package feedwitness.feed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** What must hold for any feed: charge and mass, both ways, and more is more. */
class FeedPropertiesTest {
  private static final List<Nutrient> PRINTED =
      List.of(
          Nutrient.NITRATE_N,
          Nutrient.AMMONIUM_N,
          Nutrient.UREA_N,
          Nutrient.P,
          Nutrient.K,
          Nutrient.CA,
          Nutrient.MG,
          Nutrient.S,
          Nutrient.FE);

  private static Product labelled(List<Double> percent) {
    Map<Nutrient, Double> grams = new EnumMap<>(Nutrient.class);
    for (int i = 0; i < PRINTED.size(); i++) {
      grams.put(PRINTED.get(i), percent.get(i) / 100);
    }
    return new Label(grams, 0, Set.of(Nutrient.FE))
        .product("any", "Any", Double.NaN, Double.NaN, java.util.Optional.empty());
  }

  private static Use use(Product product) {
    return new Use("use[1]", product, 1, Double.NaN, 50, Double.NaN);
  }

  @Property(tries = 300)
  void aLabelBecomesIonsWhoseChargesBalance(
      @ForAll @Size(9) List<@DoubleRange(min = 0, max = 10) Double> percent) {
    Product product = labelled(percent);
    assertEquals(0, Label.net(product.perGram()), 1e-12);
  }

  @Property(tries = 300)
  void ionsHoldTheGramsOfTheLabel(
      @ForAll @Size(9) List<@DoubleRange(min = 0, max = 10) Double> percent) {
    Product product = labelled(percent);
    Nutrients ofIons = Atoms.of(product.perGram());
    for (int i = 0; i < PRINTED.size() - 1; i++) {
      Nutrient nutrient = PRINTED.get(i);
      double closing = nutrient == Nutrient.S ? ofIons.of(nutrient) : percent.get(i) / 100;
      assertEquals(closing, ofIons.of(nutrient), 1e-12, nutrient.symbol());
      assertEquals(percent.get(i) / 100, product.nutrients().of(nutrient), 1e-12);
    }
  }

  @Property(tries = 200)
  void theElementsOfAMixAreThoseInItsGrams(
      @ForAll @Size(4) List<@DoubleRange(min = 0.01, max = 1) Double> rates) {
    List<String> names = List.of("calcium-nitrate", "KNO3", "monopotassium-phosphate", "urea");
    Forms forms =
        Forms.oneBag()
            .with("water", Map.of("kind", "rain"))
            .with("goal", Map.of("frequency", "weekly"))
            .with("make", Map.of("volume", "100 L", "scale", "0.01 g"))
            .with("use", List.of());
    for (int i = 0; i < names.size(); i++) {
      forms.use(Map.of("product", names.get(i), "rate", rates.get(i)));
    }
    MixSheet sheet = forms.sheet();
    Nutrients sum = Nutrients.NONE;
    for (MixSheet.Weighing each : sheet.weigh()) {
      sum = sum.plus(1000 * each.grams() / 100, new Products().find(each.product()).nutrients());
    }
    assertEquals(sum.nitrogen(), Forms.total(sheet, "N"), 1e-9);
    assertEquals(sum.of(Nutrient.P), Forms.total(sheet, "P"), 1e-9);
    assertEquals(sum.of(Nutrient.K), Forms.total(sheet, "K"), 1e-9);
    assertEquals(sum.of(Nutrient.CA), Forms.total(sheet, "Ca"), 1e-9);
  }

  @Property(tries = 60)
  void gramsGiveTheStrengthThatAskedForThem(
      @ForAll @DoubleRange(min = 0.6, max = 3) double strength) {
    MixSheet sheet =
        Forms.oneBag()
            .with("goal", Map.of("strength", strength, "frequency", "weekly"))
            .with("make", Map.of("volume", "1000 L", "scale", "0.01 g"))
            .sheet();
    assertEquals(strength, sheet.strength().total(), 1e-4);
  }

  @Property(tries = 40)
  void aStrongerFeedTakesMoreGrams(
      @ForAll @DoubleRange(min = 0.6, max = 2.5) double strength,
      @ForAll @DoubleRange(min = 0.05, max = 0.5) double more) {
    double less = grams(strength);
    assertTrue(grams(strength + more) > less);
  }

  private static double grams(double strength) {
    return Forms.oneBag()
        .with("goal", Map.of("strength", strength, "frequency", "weekly"))
        .sheet()
        .weigh()
        .get(0)
        .grams();
  }

  @Property(tries = 200)
  void stockLetDownIsTheFeed(
      @ForAll @DoubleRange(min = 0.1, max = 1) double rate,
      @ForAll @IntRange(min = 10, max = 100) int makes,
      @ForAll @DoubleRange(min = 1, max = 200) double litres) {
    MixSheet sheet =
        Forms.oneBag()
            .only(Map.of("product", "house-feed", "rate", rate))
            .with("goal", Map.of("frequency", "weekly"))
            .with("make", Map.of("scale", "0.01 g"))
            .with("stock", Map.of("volume", litres, "makes", makes, "coldest-night", 15))
            .sheet();
    assertEquals(rate * litres * makes, sheet.weigh().get(0).exactGrams(), 1e-6 * litres * makes);
    assertEquals(makes - 1, sheet.stocks().get(0).partsWater(), 1e-9);
  }

  @Property(tries = 200)
  void waterIsTheSameInMilligramsAndMilliequivalents(
      @ForAll @DoubleRange(min = 0.5, max = 5) double millimol) {
    SourceWater milligrams =
        hard(millimol * 40.078 + " mg/L", 2 * millimol * 50.0435 + " mg/L CaCO3");
    SourceWater equivalents = hard(2 * millimol + " meq/L", 2 * millimol + " mmol/L");
    SourceWater degrees =
        hard(millimol / WaterText.MMOL_PER_DEGREE + " °dH", 2 * millimol + " meq/L");
    assertEquals(equivalents.predicted(), milligrams.predicted(), 1e-4);
    assertEquals(equivalents.predicted(), degrees.predicted(), 1e-4);
    assertEquals(0, equivalents.imbalancePercent(), 1e-6);
  }

  private static SourceWater hard(String calcium, String alkalinity) {
    return WaterReader.read(
            new Form(
                Map.of("calcium", shorten(calcium), "alkalinity", shorten(alkalinity)),
                "",
                new ArrayList<>()),
            Forms.FORESIGHT)
        .orElseThrow();
  }

  private static String shorten(String text) {
    String[] parts = text.split(" ", 2);
    return new java.math.BigDecimal(parts[0]).setScale(8, java.math.RoundingMode.HALF_EVEN)
        + " "
        + parts[1];
  }

  /** Karush, Kuhn and Tucker: no product could be changed for the better. */
  @Property(tries = 150)
  void noRecipeCouldBeBetter(
      @ForAll @Size(5) List<@DoubleRange(min = 5, max = 200) Double> wanted) {
    List<Use> uses =
        List.of(
            use(new Products().find("calcium-nitrate")),
            use(new Products().find("potassium-nitrate")),
            use(new Products().find("monopotassium-phosphate")),
            use(new Products().find("magnesium-sulfate")));
    List<Wish> wishes = new ArrayList<>();
    List<Nutrient> nutrients =
        List.of(Nutrient.NITRATE_N, Nutrient.P, Nutrient.K, Nutrient.CA, Nutrient.MG);
    for (int i = 0; i < 5; i++) {
      wishes.add(
          new Wish(
              "", nutrients.get(i).symbol(), Set.of(nutrients.get(i)), wanted.get(i), 2, false));
    }
    Recipe recipe = new Recipe(uses, wishes, Nutrients.NONE);
    double[] grams = recipe.solve();
    double best = off(recipe, wishes, grams);
    for (int j = 0; j < grams.length; j++) {
      for (double step : new double[] {1e-3, -1e-3}) {
        double[] other = grams.clone();
        other[j] = Math.max(0, grams[j] + step);
        assertTrue(off(recipe, wishes, other) >= best - 1e-7, "product " + j + " by " + step);
      }
    }
  }

  @Property(tries = 150)
  void everyRecipeKeepsItsBounds(
      @ForAll @Size(4) List<@DoubleRange(min = 0, max = 300) Double> wanted,
      @ForAll @Size(4) List<@IntRange(min = 1, max = 3) Integer> priorities,
      @ForAll @DoubleRange(min = 0, max = 100) double ceiling,
      @ForAll @DoubleRange(min = 0.05, max = 2) double most) {
    List<Use> uses = new ArrayList<>();
    for (String id :
        List.of("calcium-nitrate", "KNO3", "magnesium-sulfate", "house-feed", "KNO3")) {
      uses.add(new Use("", new Products().find(id), 1, Double.NaN, most, Double.NaN));
    }
    List<Nutrient> nutrients = List.of(Nutrient.NITRATE_N, Nutrient.P, Nutrient.K, Nutrient.MG);
    List<Wish> wishes = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      Nutrient each = nutrients.get(i);
      wishes.add(
          new Wish("", each.symbol(), Set.of(each), wanted.get(i), priorities.get(i), false));
    }
    wishes.add(new Wish("", "S", Set.of(Nutrient.S), ceiling, 2, true));
    Recipe recipe = new Recipe(uses, wishes, Nutrients.NONE);
    double[] grams = recipe.solve();
    for (double each : grams) {
      assertTrue(each >= 0 && each <= most, () -> each + " g/L");
    }
    assertTrue(recipe.reached(4, grams) <= ceiling + 0.01, "sulfur " + recipe.reached(4, grams));
    assertTrue(recipe.binding(grams).size() <= 10);
  }

  private static double off(Recipe recipe, List<Wish> wishes, double[] grams) {
    double sum = 0;
    for (int i = 0; i < wishes.size(); i++) {
      double relative = recipe.reached(i, grams) / wishes.get(i).milligrams() - 1;
      sum += relative * relative;
    }
    return sum;
  }
}
