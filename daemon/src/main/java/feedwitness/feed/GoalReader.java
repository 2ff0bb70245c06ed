package feedwitness.feed;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The {@code goal} form: a strength, or nutrients, or both, and how often. */
final class GoalReader {
  private static final double MOST_MILLIGRAMS = 2000;

  private GoalReader() {}

  record Goal(
      Frequency frequency, Optional<Double> total, Optional<Double> added, List<Wish> wishes) {
    Goal {
      wishes = List.copyOf(wishes);
    }
  }

  static Goal read(Form root, List<Use> uses) {
    Optional<Form> form = root.form("goal");
    if (form.isEmpty()) {
      root.fault(
          "goal",
          "is missing",
          "say how often the feed is given, and a strength, nutrients, or a rate for each product");
      return new Goal(Frequency.EVERY_WATERING, Optional.empty(), Optional.empty(), List.of());
    }
    Form goal = form.get();
    goal.missing(
        "frequency",
        "a strength means nothing without it: every watering, twice a week, weekly, now and then");
    Frequency frequency =
        goal.choice("frequency", Frequency.choices()).orElse(Frequency.EVERY_WATERING);
    Optional<Double> total = goal.read("strength", Amounts::strength);
    Optional<Double> added = goal.read("added", Amounts::strength);
    if (goal.has("strength") && goal.has("added")) {
      goal.fault(
          "added",
          "is given beside strength",
          "give the total, water included, or the part added by feed, not both");
    }
    List<Wish> wishes = goal.form("nutrients").map(GoalReader::wishes).orElse(List.of());
    boolean rates = !uses.isEmpty() && uses.stream().noneMatch(u -> Double.isNaN(u.rate()));
    boolean aims = goal.has("strength") || goal.has("added") || goal.has("nutrients");
    if (!aims && !rates && !uses.isEmpty()) {
      goal.fault(
          "strength",
          "is missing",
          "give a strength, nutrients, or a rate in g/L for each product");
    }
    if (aims && uses.stream().anyMatch(u -> !Double.isNaN(u.rate()))) {
      goal.fault(
          goal.has("strength") ? "strength" : goal.has("added") ? "added" : "nutrients",
          "is given beside rates of products",
          "give the goal and have the grams found, or give all rates and no goal");
    }
    goal.finish();
    return new Goal(frequency, total, added, wishes);
  }

  private static List<Wish> wishes(Form form) {
    List<Wish> wishes = new ArrayList<>();
    for (String key : form.keys()) {
      Optional<Nutrient> oxide = Nutrient.ofOxide(key);
      Optional<Nutrient> nutrient = oxide.or(() -> Nutrient.of(key));
      boolean nitrogen = key.equalsIgnoreCase("N");
      if (nutrient.isEmpty() && !nitrogen) {
        form.fault(
            key, "is no nutrient", "write N, nitrate-N, ammonium-N, P, K, Ca, Mg, S, Fe … or P2O5");
        form.has(key);
        continue;
      }
      Set<Nutrient> counts =
          nutrient
              .<Set<Nutrient>>map(EnumSet::of)
              .orElse(EnumSet.of(Nutrient.NITRATE_N, Nutrient.AMMONIUM_N, Nutrient.UREA_N));
      double factor = oxide.map(Nutrient::oxidePerElement).orElse(1.0);
      String symbol = nutrient.map(Nutrient::symbol).orElse("N");
      wish(form, key, symbol, counts, factor).ifPresent(wishes::add);
    }
    form.finish();
    return wishes;
  }

  private static Optional<Wish> wish(
      Form form, String key, String symbol, Set<Nutrient> counts, double factor) {
    String field = "goal.nutrients." + key;
    Optional<Form> detail = form.table(key);
    if (detail.isEmpty()) {
      return form.read(key, Amounts::milligramsPerLitre, 0, MOST_MILLIGRAMS, "mg/L")
          .map(mg -> new Wish(field, symbol, counts, mg / factor, 2, false));
    }
    Form wish = detail.get();
    int priority = wish.choice("priority", Map.of("1", 1, "2", 2, "3", 3)).orElse(2);
    Optional<Double> want =
        wish.read("want", Amounts::milligramsPerLitre, 0, MOST_MILLIGRAMS, "mg/L");
    Optional<Double> most =
        wish.read("most", Amounts::milligramsPerLitre, 0, MOST_MILLIGRAMS, "mg/L");
    if (want.isPresent() == most.isPresent()) {
      wish.fault("want", "is not clear", "give want, or most for a ceiling");
    }
    wish.finish();
    return want.or(() -> most)
        .map(mg -> new Wish(field, symbol, counts, mg / factor, priority, want.isEmpty()));
  }
}
