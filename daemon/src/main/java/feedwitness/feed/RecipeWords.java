package feedwitness.feed;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Says of a recipe what could not be met and which limit holds it. */
final class RecipeWords {
  private static final double MET = 0.02;
  private static final double LEAST_OFF = 0.05;
  private static final double NONE = 1e-6;

  private final Recipe recipe;
  private final List<Use> uses;
  private final List<Wish> wishes;
  private final double[] grams;

  RecipeWords(Recipe recipe, List<Use> uses, List<Wish> wishes, double[] grams) {
    this.recipe = recipe;
    this.uses = uses;
    this.wishes = wishes;
    this.grams = grams;
  }

  List<String> all() {
    List<String> words = new ArrayList<>();
    for (int i = 0; i < wishes.size(); i++) {
      Wish wish = wishes.get(i);
      double off = recipe.reached(i, grams) - wish.milligrams();
      double enough = Math.max(LEAST_OFF, MET * wish.milligrams());
      if (wish.ceiling()) {
        if (off > -enough) {
          words.add(
              "%s is at its ceiling of %s mg/L".formatted(wish.symbol(), mg(wish.milligrams())));
        }
      } else if (off < -enough) {
        words.add(shortOf(i, -off));
      } else if (off > enough) {
        words.add(over(i, off));
      }
    }
    for (int j = 0; j < grams.length; j++) {
      if (grams[j] < NONE) {
        words.add(uses.get(j).product().title() + ": not needed, 0 g");
      }
    }
    return words;
  }

  private String shortOf(int wish, double by) {
    String what =
        "%s is %s mg/L short of %s mg/L"
            .formatted(wishes.get(wish).symbol(), mg(by), mg(wishes.get(wish).milligrams()));
    List<Integer> holders = holders(wish);
    if (holders.isEmpty()) {
      return what + ": none of the chosen products holds it; add one that does";
    }
    List<Integer> free =
        holders.stream().filter(j -> grams[j] < uses.get(j).most() * (1 - NONE)).toList();
    if (free.isEmpty()) {
      return what + ": " + names(holders) + " is at its limit";
    }
    String against =
        free.stream()
            .map(this::against)
            .flatMap(Optional::stream)
            .distinct()
            .collect(Collectors.joining(", "));
    return what
        + ": more %s would bring too much %s"
            .formatted(names(free), against.isEmpty() ? "else" : against);
  }

  /** What else a product brings that is already at or above its wish. */
  private Optional<String> against(int use) {
    List<String> full = new ArrayList<>();
    for (int i = 0; i < wishes.size(); i++) {
      boolean brings = recipe.gain(i, use) > 1;
      if (brings && recipe.reached(i, grams) >= wishes.get(i).milligrams() * (1 - NONE)) {
        full.add(wishes.get(i).symbol());
      }
    }
    return full.isEmpty() ? Optional.empty() : Optional.of(String.join(" and ", full));
  }

  private String over(int wish, double by) {
    Wish it = wishes.get(wish);
    String what = "%s is %s mg/L over %s mg/L".formatted(it.symbol(), mg(by), mg(it.milligrams()));
    if (recipe.room(wish) < 0) {
      return what + ": the water alone brings %s".formatted(mg(recipe.ofWater(it)));
    }
    List<Integer> bringing = holders(wish).stream().filter(j -> grams[j] > NONE).toList();
    return what + ": it comes with " + names(bringing) + ", wanted for other nutrients";
  }

  private List<Integer> holders(int wish) {
    List<Integer> holders = new ArrayList<>();
    for (int j = 0; j < uses.size(); j++) {
      if (recipe.gain(wish, j) > 0) {
        holders.add(j);
      }
    }
    return holders;
  }

  private String names(List<Integer> places) {
    return places.stream().map(j -> uses.get(j).product().id()).collect(Collectors.joining(" or "));
  }

  private static String mg(double milligrams) {
    return Text.figures(milligrams, 3);
  }
}
