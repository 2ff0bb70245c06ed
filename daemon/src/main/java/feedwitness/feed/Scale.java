package feedwitness.feed;

import java.util.ArrayList;
import java.util.List;

/** Rounds doses to what the scale can weigh. */
final class Scale {
  /** Rounding that moves a dose by more than this share deserves a word. */
  private static final double COARSE = 0.03;

  /** Level spoons are good to about this share. */
  private static final double SPOON = 0.1;

  private final MixRequest request;
  private final List<String> notes = new ArrayList<>();

  Scale(MixRequest request) {
    this.request = request;
  }

  /** Litres of feed that one weighing stands for. */
  double litres() {
    return request.stock().map(s -> s.litres() * s.makes()).orElse(request.litres());
  }

  List<String> notes() {
    return notes;
  }

  /** The doses as weighed. */
  List<Dose> rounded(List<Dose> exact) {
    List<Dose> rounded = new ArrayList<>();
    for (Dose dose : exact) {
      double grams = dose.gramsPerLitre() * litres();
      double weighed = round(dose, grams);
      if (grams > 0 && Math.abs(weighed - grams) > COARSE * grams) {
        notes.add(
            "%s: %s g is too little for this scale; weigh for a larger batch, or make a stock"
                .formatted(dose.product().id(), Text.figures(grams, 3)));
      }
      rounded.add(new Dose(dose.use(), weighed / litres()));
    }
    return rounded;
  }

  private double round(Dose dose, double grams) {
    if (dose.product().isLiquid()) {
      double step = request.scale() / dose.product().density();
      return Math.rint(grams / dose.product().density() / step) * step * dose.product().density();
    }
    double spoon = dose.use().spoonGrams();
    double step = Double.isNaN(spoon) ? request.scale() : spoon / 4;
    return Math.rint(grams / step) * step;
  }

  MixSheet.Weighing weighing(Dose exact, Dose rounded, String stock) {
    Product product = exact.product();
    double grams = rounded.gramsPerLitre() * litres();
    double spoon = exact.use().spoonGrams();
    double spoons = Math.rint(4 * grams / spoon) / 4;
    double millilitres = product.isLiquid() ? grams / product.density() : Double.NaN;
    String text = request.units().mass(grams, request.scale());
    if (product.isLiquid()) {
      text = "%s (%s)".formatted(request.units().volume(millilitres / 1000), text);
    } else if (!Double.isNaN(spoon)) {
      text =
          "%s level spoons (%s; a spoon is good to about %s %%)"
              .formatted(Text.plain(spoons), text, Text.plain(100 * SPOON));
    }
    return new MixSheet.Weighing(
        product.id(),
        product.title(),
        rounded.gramsPerLitre(),
        exact.gramsPerLitre() * litres(),
        grams,
        text,
        millilitres,
        spoons,
        stock);
  }
}
