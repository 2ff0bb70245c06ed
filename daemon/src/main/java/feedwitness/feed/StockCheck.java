package feedwitness.feed;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A stock or an injector held against what it should be.
 *
 * @param kind {@code dilution} or {@code draw-down}
 * @param expected strength in mS/cm, or litres from one litre
 * @param found the same
 * @param ratio found against expected: of the salts in the stock, or of the litres
 * @param text the finding in words
 */
public record StockCheck(String kind, double expected, double found, double ratio, String text) {
  /** Measuring cup, syringe and meter: relative standard uncertainties. */
  private static final double CUP = 0.02;

  private static final double METER = 0.02;

  /** A diluted stock measured: needs the mix that the stock was made for. */
  static Optional<StockCheck> dilution(Form form, Stocks stocks, List<Dose> doses) {
    int before = form.faults().size();
    form.missing("stock", "millilitres of stock taken, such as 10 mL");
    form.missing("in", "litres they were made up to, such as 1 L");
    form.missing("measured", "what the meter read at 25 °C, such as 1.02 mS/cm");
    Optional<Double> taken = form.read("stock", Amounts::litres, 1e-4, 10, "L");
    Optional<Double> in = form.read("in", Amounts::litres, 0.01, 1000, "L");
    Optional<Double> measured = form.read("measured", Amounts::strength);
    String name =
        form.choice("of", Map.of("calcium", Stocks.CALCIUM, "sulfate-phosphate", Stocks.OTHER))
            .orElse(stocks.names().get(0));
    form.finish();
    if (form.faults().size() > before) {
      return Optional.empty();
    }
    if (taken.orElseThrow() * 5 > in.orElseThrow()) {
      form.fault("in", "is less than five times the stock", "dilute more: 10 mL to 1 L");
      return Optional.empty();
    }
    double water = stocks.diluted(name, doses, 0);
    double expected = stocks.diluted(name, doses, taken.get() / in.get());
    double ratio = (measured.orElseThrow() - water) / (expected - water);
    double label = doses.stream().mapToDouble(d -> d.product().labelUncertainty()).max().orElse(0);
    double doubt = Math.sqrt(CUP * CUP + METER * METER + label * label);
    String verdict = Verdict.of(ratio, doubt, "too strong", "too weak");
    return Optional.of(
        new StockCheck(
            "dilution",
            expected,
            measured.get(),
            ratio,
            "%s reads %s mS/cm where %s is expected: %s"
                .formatted(name, Text.fixed(measured.get(), 2), Text.fixed(expected, 2), verdict)));
  }

  /** Stock drawn for litres delivered: the ratio, without conductivity. */
  static Optional<StockCheck> drawDown(Form form, Optional<StockWish> wish) {
    int before = form.faults().size();
    form.missing("drawn", "litres of stock gone from the barrel");
    form.missing("delivered", "litres of feed caught or metered meanwhile");
    Optional<Double> drawn = form.read("drawn", Amounts::litres, 1e-3, 1e4, "L");
    Optional<Double> delivered = form.read("delivered", Amounts::litres, 0.01, 1e6, "L");
    Optional<Double> set = form.read("should-make", Amounts::litres, 2, 1000, "L");
    form.finish();
    if (form.faults().size() == before && delivered.orElseThrow() < 2 * drawn.orElseThrow()) {
      form.fault("delivered", "is hardly more than the stock", "exchange the two, or the units");
    }
    if (form.faults().size() > before) {
      return Optional.empty();
    }
    double makes = delivered.orElseThrow() / drawn.orElseThrow();
    double should = set.or(() -> wish.map(StockWish::makes)).orElse(Double.NaN);
    String found = "one litre of stock makes %s L".formatted(Text.figures(makes, 3));
    if (Double.isNaN(should)) {
      return Optional.of(new StockCheck("draw-down", should, makes, should, found));
    }
    double ratio = makes / should;
    // more litres from one litre is a weaker feed
    String verdict =
        Verdict.of(1 / ratio, Math.hypot(CUP, CUP), "more stock than set", "less stock than set");
    return Optional.of(
        new StockCheck(
            "draw-down",
            should,
            makes,
            ratio,
            "%s, set for %s: %s".formatted(found, Text.figures(should, 3), verdict)));
  }
}
