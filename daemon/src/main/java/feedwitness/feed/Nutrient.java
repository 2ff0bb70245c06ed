package feedwitness.feed;

import java.util.Optional;

/**
 * What a feed is weighed out for, as element. Nitrogen stands in its three forms, because
 * conductivity sees two of them only. Oxide factors are the conventional ones of fertilizer labels.
 */
public enum Nutrient {
  NITRATE_N("nitrate-N", "", 1),
  AMMONIUM_N("ammonium-N", "", 1),
  UREA_N("urea-N", "", 1),
  P("P", "P2O5", 2.2914),
  K("K", "K2O", 1.2046),
  CA("Ca", "CaO", 1.3992),
  MG("Mg", "MgO", 1.6583),
  S("S", "SO3", 2.4972),
  NA("Na", "", 1),
  CL("Cl", "", 1),
  FE("Fe", "", 1),
  MN("Mn", "", 1),
  ZN("Zn", "", 1),
  CU("Cu", "", 1),
  B("B", "", 1),
  MO("Mo", "", 1);

  private final String symbol;
  private final String oxide;
  private final double oxidePerElement;

  Nutrient(String symbol, String oxide, double oxidePerElement) {
    this.symbol = symbol;
    this.oxide = oxide;
    this.oxidePerElement = oxidePerElement;
  }

  /** As written in recipes: {@code P}, {@code nitrate-N}. */
  public String symbol() {
    return symbol;
  }

  /** The oxide it is sold by, such as {@code P2O5}; none for most. */
  public Optional<String> oxide() {
    return oxide.isEmpty() ? Optional.empty() : Optional.of(oxide);
  }

  /** Grams of oxide for a gram of element; 1 where there is no oxide. */
  public double oxidePerElement() {
    return oxidePerElement;
  }

  /** Whether it is one of the three forms of nitrogen. */
  public boolean isNitrogen() {
    return this == NITRATE_N || this == AMMONIUM_N || this == UREA_N;
  }

  /** Whether it is a trace element. */
  public boolean isTrace() {
    return switch (this) {
      case FE, MN, ZN, CU, B, MO -> true;
      default -> false;
    };
  }

  /** By symbol, letter case aside. */
  static Optional<Nutrient> of(String symbol) {
    for (Nutrient each : values()) {
      if (each.symbol.equalsIgnoreCase(symbol)) {
        return Optional.of(each);
      }
    }
    return Optional.empty();
  }

  /** By the symbol of the oxide, letter case aside. */
  static Optional<Nutrient> ofOxide(String oxide) {
    for (Nutrient each : values()) {
      if (!each.oxide.isEmpty() && each.oxide.equalsIgnoreCase(oxide)) {
        return Optional.of(each);
      }
    }
    return Optional.empty();
  }
}
