package feedwitness.feed;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The {@code stock} form: how much concentrate, and how it is let down. */
final class StockReader {
  private static final double LEAST = 2;
  private static final double MOST = 1000;

  private StockReader() {}

  static Optional<StockWish> read(Form form, List<Use> uses) {
    int before = form.faults().size();
    form.missing("volume", "litres of stock to make, such as 20 L");
    Optional<Double> litres = form.read("volume", Amounts::litres, 0.05, 10_000, "L");
    StockWish.Dial dial = dial(form);
    Optional<Double> makes = makes(form, dial);
    Optional<Double> night = form.read("coldest-night", Amounts::celsius, -10, 40, "°C");
    form.missing(
        "coldest-night", "how cold the stock gets, such as 4 °C: salts fall out in the cold");
    int count = form.choice("stocks", Map.of("1", 1, "2", 2)).orElse(1);
    form.finish();
    boolean calcium = uses.stream().anyMatch(u -> u.product().hasCalcium());
    boolean other =
        uses.stream()
            .anyMatch(u -> !u.product().hasCalcium() && u.product().hasSulfateOrPhosphate());
    if (count == 1 && calcium && other) {
      form.fault(
          "stocks",
          "calcium meets sulfate or phosphate in one stock and falls out as stone",
          "make two stocks, or give one of them from the tank on another day");
    }
    if (form.faults().size() > before) {
      return Optional.empty();
    }
    return Optional.of(
        new StockWish(litres.orElseThrow(), makes.orElseThrow(), count, night.orElseThrow(), dial));
  }

  /** One litre of stock makes so many litres of feed; several ways to say it. */
  private static Optional<Double> makes(Form form, StockWish.Dial dial) {
    Optional<Double> makes = form.read("makes", Amounts::litres, LEAST, MOST, "L");
    Optional<Double> percent =
        form.read("percent", Amounts::percent, 100 / MOST, 100 / LEAST, "%").map(p -> 100 / p);
    Optional<Double> parts =
        form.read("parts-water", Amounts::number, LEAST - 1, MOST - 1, "").map(p -> p + 1);
    Optional<Double> set = form.read("dial", Amounts::number, 0, 1000, "").map(dial::makesAt);
    long given =
        List.of("makes", "percent", "parts-water", "dial").stream().filter(form::has).count();
    if (given != 1) {
      form.fault(
          "makes",
          given == 0 ? "is missing" : "is said in more than one way",
          "say what one litre of stock makes, or percent, or parts of water, or a dial setting");
    }
    if (set.isPresent() && Double.isNaN(set.get())) {
      form.fault(
          "dial",
          "is not between the settings measured",
          "measure the dial there by a draw-down, and add it to dial-points");
    }
    return makes.or(() -> percent).or(() -> parts).or(() -> set);
  }

  private static StockWish.Dial dial(Form form) {
    List<StockWish.Dial.Setting> settings = new ArrayList<>();
    for (Form each : form.forms("dial-points", 30)) {
      Optional<Double> at = each.read("dial", Amounts::number, 0, 1000, "");
      Optional<Double> makes = each.read("makes", Amounts::litres, LEAST, MOST, "L");
      each.missing("dial", "the setting");
      each.missing("makes", "litres that one litre of stock made there");
      each.finish();
      if (at.isPresent() && makes.isPresent()) {
        settings.add(new StockWish.Dial.Setting(at.get(), makes.get()));
      }
    }
    return new StockWish.Dial(settings);
  }
}
