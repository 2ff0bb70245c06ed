package feedwitness.feed;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The fertilizers a recipe may name: straight salts, the demo feed, and one's own. */
final class Products {
  private final Map<String, Product> byId = new LinkedHashMap<>();

  /** Without any of one's own. */
  Products() {
    Salts.ALL.forEach(salt -> byId.put(salt.id(), salt.product()));
    byId.put(HouseFeed.ID, HouseFeed.product());
  }

  /** Adds one's own; false if its name is taken. */
  boolean add(Product product) {
    return byId.putIfAbsent(product.id(), product) == null;
  }

  /** Holds the place of a product whose form is at fault. */
  void addFaulty(String id) {
    byId.putIfAbsent(
        id,
        new Label(Map.of(), 0, Set.of()).product(id, id, Double.NaN, Double.NaN, Optional.empty()));
  }

  List<Product> all() {
    return List.copyOf(byId.values());
  }

  /**
   * By name or formula.
   *
   * @throws IllegalArgumentException {@code reason; remedy} if there is none
   */
  Product find(String text) {
    String plain = text.strip().toLowerCase(Locale.ROOT).replace(' ', '-');
    Product known = byId.get(plain);
    if (known != null) {
      return known;
    }
    if (text.matches(".*[A-Z].*[0-9A-Z].*") && !text.contains(" ")) {
      return SaltFormula.find(text).product();
    }
    Optional<String> near = byId.keySet().stream().filter(id -> Text.alike(id, plain)).findFirst();
    throw new IllegalArgumentException(
        "is no fertilizer we know; "
            + near.map("did you mean %s?"::formatted)
                .orElse("describe it as a product of your own, with its label"));
  }

  /** Names, for messages. */
  List<String> ids() {
    return new ArrayList<>(byId.keySet());
  }
}
