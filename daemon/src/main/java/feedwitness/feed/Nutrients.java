package feedwitness.feed;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * Amounts of nutrients as elements: grams in a gram of product, or mg/L in a solution, as whoever
 * holds it says. What is not named is absent.
 */
public record Nutrients(Map<Nutrient, Double> amounts) {
  static final Nutrients NONE = new Nutrients(Map.of());

  public Nutrients {
    EnumMap<Nutrient, Double> copy = new EnumMap<>(Nutrient.class);
    copy.putAll(amounts);
    amounts = Collections.unmodifiableMap(copy);
  }

  /** One of them; 0 where absent. */
  public double of(Nutrient nutrient) {
    return amounts.getOrDefault(nutrient, 0.0);
  }

  /** Nitrogen in all forms. */
  public double nitrogen() {
    return of(Nutrient.NITRATE_N) + of(Nutrient.AMMONIUM_N) + of(Nutrient.UREA_N);
  }

  /** This and a multiple of another. */
  public Nutrients plus(double factor, Nutrients other) {
    Map<Nutrient, Double> sum = new EnumMap<>(Nutrient.class);
    sum.putAll(amounts);
    other.amounts.forEach((each, amount) -> sum.merge(each, factor * amount, Double::sum));
    return new Nutrients(sum);
  }

  /** All of it times a factor. */
  public Nutrients times(double factor) {
    return NONE.plus(factor, this);
  }

  /** This with one amount set. */
  Nutrients with(Nutrient nutrient, double amount) {
    Map<Nutrient, Double> changed = new EnumMap<>(Nutrient.class);
    changed.putAll(amounts);
    changed.put(nutrient, amount);
    return new Nutrients(changed);
  }
}
