package feedwitness.feed;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds the grams of a mix: as given, for nutrients, for a strength, or for both. */
final class Doses {
  private static final double MOST_GRAMS = 100;
  private static final int HALVINGS = 60;

  private final MixRequest request;
  private final Foresight foresight;
  private final List<Fault> faults = new ArrayList<>();
  private final List<String> binding = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  Doses(MixRequest request, Foresight foresight) {
    this.request = request;
    this.foresight = foresight;
  }

  List<Fault> faults() {
    return faults;
  }

  List<String> binding() {
    return binding;
  }

  List<String> notes() {
    return notes;
  }

  /** Strength wanted in all; NaN without one. */
  double wanted() {
    return request
        .total()
        .or(() -> request.added().map(added -> added + waterStrength()))
        .orElse(Double.NaN);
  }

  /** Of the water after acid, mS/cm. */
  double waterStrength() {
    return blend(List.of()).strength(foresight);
  }

  Blend blend(List<Dose> doses) {
    return new Blend(request.water(), request.acid(), doses);
  }

  /** The doses; empty with faults noted. */
  Optional<List<Dose>> find() {
    List<Dose> ratio = new ArrayList<>();
    if (!request.wishes().isEmpty()) {
      double[] grams = recipe();
      for (int i = 0; i < grams.length; i++) {
        ratio.add(new Dose(request.uses().get(i), grams[i]));
      }
    } else {
      for (Use use : request.uses()) {
        ratio.add(new Dose(use, Double.isNaN(use.rate()) ? use.part() : use.rate()));
      }
    }
    if (!faults.isEmpty()) {
      return Optional.empty();
    }
    return Double.isNaN(wanted()) ? Optional.of(ratio) : scaled(ratio);
  }

  private double[] recipe() {
    Recipe recipe = new Recipe(request.uses(), request.wishes(), blend(List.of()).nutrients());
    for (Wish wish : recipe.impossible()) {
      faults.add(
          new Fault(
              wish.field(),
              Text.plain(wish.milligrams()),
              "the water alone brings %s mg/L %s"
                  .formatted(Text.figures(recipe.ofWater(wish), 3), wish.symbol()),
              "raise the ceiling or use other water"));
    }
    if (!faults.isEmpty()) {
      return new double[0];
    }
    double[] grams = recipe.solve();
    binding.addAll(recipe.binding(grams));
    if (!Double.isNaN(wanted())) {
      notes.add(
          "the nutrients give the proportions, the strength the amount: all grams are scaled to it");
    }
    return grams;
  }

  /** All doses by one factor so that the strength is met. */
  private Optional<List<Dose>> scaled(List<Dose> ratio) {
    Blend unit = blend(ratio);
    double wanted = wanted();
    double water = waterStrength();
    String field = request.total().isPresent() ? "goal.strength" : "goal.added";
    double grams = ratio.stream().mapToDouble(Dose::gramsPerLitre).sum();
    if (!(wanted > water)) {
      faults.add(
          new Fault(
              field,
              Text.plain(wanted),
              "the water alone has %s mS/cm".formatted(Text.fixed(water, 2)),
              "choose more, or soften the water with rain"));
      return Optional.empty();
    }
    double low = 0;
    double high = grams > 0 ? MOST_GRAMS / grams : 0;
    if (!reaches(unit, high, wanted)) {
      faults.add(
          new Fault(
              field,
              Text.plain(wanted),
              "no amount of the chosen products brings the water there",
              "urea and boric acid do not conduct; choose products with ions"));
      return Optional.empty();
    }
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      double at = unit.scaled(middle).strength(foresight);
      if (at < wanted) {
        low = middle;
      } else {
        high = middle; // above, or beyond the model
      }
    }
    return limited(unit.scaled((low + high) / 2).doses(), field);
  }

  private boolean reaches(Blend unit, double most, double wanted) {
    for (double share = most; share > most / 1e4; share /= 2) {
      double at = unit.scaled(share).strength(foresight);
      if (at >= wanted) {
        return true;
      }
      if (!Double.isNaN(at)) {
        return false;
      }
    }
    return false;
  }

  private Optional<List<Dose>> limited(List<Dose> doses, String field) {
    for (Dose dose : doses) {
      if (dose.gramsPerLitre() > dose.use().most()) {
        faults.add(
            new Fault(
                dose.use().field() + ".most",
                Text.plain(dose.use().most()) + " g/L",
                "%s would need %s g/L"
                    .formatted(dose.product().id(), Text.figures(dose.gramsPerLitre(), 3)),
                "lower %s or raise the limit".formatted(field)));
      }
    }
    return faults.isEmpty() ? Optional.of(doses) : Optional.empty();
  }
}
