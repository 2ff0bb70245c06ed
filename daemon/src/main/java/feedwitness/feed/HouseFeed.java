package feedwitness.feed;

import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * House Feed 16.4-7.1-18.6, the compound feed of the demo nursery: an invented label. Nitrogen 16.4
 * % (8.2 nitrate, 3.1 ammonium, 5.1 urea), P2O5 7.1 %, K2O 18.6 %, MgO 1.9 %, SO3 3.8 %.
 */
public final class HouseFeed {
  /** How recipes name it. */
  public static final String ID = "house-feed";

  private HouseFeed() {}

  /** As a product. */
  public static Product product() {
    Map<Nutrient, Double> grams =
        Map.of(
            Nutrient.NITRATE_N, 0.082,
            Nutrient.AMMONIUM_N, 0.031,
            Nutrient.UREA_N, 0.051,
            Nutrient.P, 0.071 / Nutrient.P.oxidePerElement(),
            Nutrient.K, 0.186 / Nutrient.K.oxidePerElement(),
            Nutrient.MG, 0.019 / Nutrient.MG.oxidePerElement(),
            Nutrient.S, 0.038 / Nutrient.S.oxidePerElement());
    return new Label(grams, 0, Set.of())
        .product(
            ID,
            "House Feed 16.4-7.1-18.6 (demo label)",
            Double.NaN,
            180,
            Optional.of(new Product.Rate(0.5, 1.2)));
  }
}
