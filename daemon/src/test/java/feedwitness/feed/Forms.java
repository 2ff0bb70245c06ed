package feedwitness.feed;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.solution.ConductivityModel;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Forms as growers fill them in at Quarry End, and what comes of them. */
final class Forms {
  static final ConductivityModel MODEL = new ConductivityModel();
  static final Foresight FORESIGHT = new Foresight(MODEL);
  static final Mixer MIXER = new Mixer(MODEL);

  static final Map<String, Object> BOREHOLE =
      Map.of(
          "calcium", "72 mg/L",
          "magnesium", "8.5 mg/L",
          "sodium", "11.5 mg/L",
          "chloride", "17.7 mg/L",
          "sulfate", "19.2 mg/L",
          "alkalinity", "3.9 mmol/L",
          "measured", "0.46 mS/cm");

  private final Map<String, Object> fields = new LinkedHashMap<>();

  private Forms() {}

  /** House Feed in borehole water at 1.50 mS/cm for the 600 L tank. */
  static Forms oneBag() {
    return new Forms()
        .with("water", BOREHOLE)
        .with("goal", Map.of("strength", "1.50 mS/cm", "frequency", "every watering"))
        .use("house-feed")
        .with("make", Map.of("volume", "600 L", "temperature", "14 °C"));
  }

  /** Salts in rain water for nutrients. */
  static Forms salts(Map<String, ?> nutrients, String... products) {
    Forms forms =
        new Forms()
            .with("water", Map.of("kind", "rain"))
            .with("goal", Map.of("nutrients", nutrients, "frequency", "every watering"))
            .with("make", Map.of("volume", "1000 L", "scale", "0.1 g"));
    for (String product : products) {
      forms.use(product);
    }
    return forms;
  }

  Forms with(String section, Object value) {
    fields.put(section, value);
    return this;
  }

  Forms use(String product) {
    return use(Map.of("product", product));
  }

  Forms use(Map<String, ?> use) {
    List<Object> all = new ArrayList<>();
    if (fields.get("use") instanceof List<?> before) {
      all.addAll(before);
    }
    all.add(use);
    return with("use", all);
  }

  Forms only(Map<String, ?> use) {
    return with("use", List.of(use));
  }

  MixOutcome outcome() {
    return MIXER.mix(fields);
  }

  MixOutcome.Mixed mixed() {
    MixOutcome outcome = outcome();
    return assertInstanceOf(MixOutcome.Mixed.class, outcome, outcome::toString);
  }

  MixSheet sheet() {
    return mixed().sheet().orElseThrow();
  }

  List<Fault> faults() {
    return assertInstanceOf(MixOutcome.Faulty.class, outcome()).faults();
  }

  /** The only fault is at this field and says these words. */
  void refused(String field, String... words) {
    List<Fault> faults = faults();
    assertTrue(faults.size() == 1 && faults.get(0).field().equals(field), faults::toString);
    for (String word : words) {
      assertTrue(faults.get(0).message().contains(word), faults::toString);
    }
  }

  static double total(MixSheet sheet, String symbol) {
    return line(sheet, symbol).total();
  }

  static MixSheet.NutrientLine line(MixSheet sheet, String symbol) {
    return sheet.nutrients().stream()
        .filter(l -> l.symbol().equals(symbol))
        .findFirst()
        .orElseThrow();
  }

  static MixSheet.Weighing weighing(MixSheet sheet, String product) {
    return sheet.weigh().stream()
        .filter(w -> w.product().equals(product))
        .findFirst()
        .orElseThrow();
  }

  static boolean says(List<String> texts, String words) {
    return texts.stream().anyMatch(text -> text.contains(words));
  }
}
