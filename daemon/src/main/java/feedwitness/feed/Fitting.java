package feedwitness.feed;

import feedwitness.solution.Composition;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Fits a product to the bag at hand: one or two weighed and measured solutions say how much it
 * really conducts for its label. The nutrients stay those of the label.
 */
final class Fitting {
  private static final double LEAST = 0.5;
  private static final double MOST = 1.6;

  /** Weighing and measuring by hand: relative standard uncertainty of one point. */
  private static final double ONE_POINT = 0.03;

  private static final double DISAGREEING = 0.06;
  private static final int HALVINGS = 50;

  private final Foresight foresight;

  Fitting(Foresight foresight) {
    this.foresight = foresight;
  }

  private record Point(double gramsPerLitre, double strength, double water) {}

  /** The product, fitted if its form has measured points. */
  Optional<Product> read(Form form, Product product) {
    List<Point> points = new ArrayList<>();
    boolean sound = true;
    for (Form each : form.forms("measured", 2)) {
      each.missing("rate", "grams weighed for each litre, such as 1 g/L");
      each.missing("strength", "what the meter read, such as 1.35 mS/cm");
      Optional<Double> rate = each.read("rate", Amounts::gramsPerLitre, 0.05, 20, "g/L");
      Optional<Double> strength = each.read("strength", Amounts::strength);
      double water = each.read("water", Amounts::strength).orElse(0.0);
      each.finish();
      if (rate.isEmpty() || strength.isEmpty()) {
        sound = false;
      } else if (!(strength.get() > water)) {
        each.fault("strength", "is not above the water's own", "measure the water first");
        sound = false;
      } else {
        points.add(new Point(rate.get(), strength.get(), water));
      }
    }
    if (points.isEmpty() || !sound) {
      return sound ? Optional.of(product) : Optional.empty();
    }
    return fit(form, product, points);
  }

  private Optional<Product> fit(Form form, Product product, List<Point> points) {
    if (product.perGram().ions().isEmpty()) {
      form.fault("measured", "nothing in it conducts", "leave the measured points out");
      return Optional.empty();
    }
    double sum = 0;
    double least = Double.MAX_VALUE;
    double most = 0;
    for (Point point : points) {
      double factor = factor(product, point);
      sum += factor;
      least = Math.min(least, factor);
      most = Math.max(most, factor);
    }
    double factor = sum / points.size();
    if (!(factor >= LEAST && factor <= MOST)) {
      form.fault(
          "measured",
          "the bag conducts %s times what its label makes".formatted(Text.figures(factor, 2)),
          "check the grams, the unit of the meter and the label; weigh and measure again");
      return Optional.empty();
    }
    List<String> notes = new ArrayList<>();
    notes.add(
        "fitted to the bag at hand: it conducts %s of what its label makes"
            .formatted(Text.fixed(factor, 3)));
    double spread = (most - least) / factor;
    if (spread > DISAGREEING) {
      notes.add(
          "the two measured points differ by %s %%; weigh and measure once more"
              .formatted(Text.fixed(100 * spread, 0)));
    }
    double doubt = ONE_POINT / Math.sqrt(points.size());
    return Optional.of(product.fitted(factor, Math.hypot(doubt, spread / 2), notes));
  }

  private double factor(Product product, Point point) {
    Composition water =
        point.water() < 0.03
            ? Composition.WATER
            : SourceWater.ofStrength(point.water(), foresight).perLitre();
    double none = foresight.at25(water);
    double low = 0;
    double high = 3;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      double at = foresight.at25(water.plus(middle * point.gramsPerLitre(), product.perGram()));
      if (at - none < point.strength() - point.water()) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
