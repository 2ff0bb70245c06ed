package feedwitness.feed;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads the form of a mix: {@code water}, {@code goal}, {@code use}, {@code make}, {@code meter}.
 */
final class MixReader {
  private static final int MOST_PRODUCTS = 20;
  private static final double MOST_GRAMS_PER_LITRE = 50;
  private static final double WATERING_SHARE = 0.2;

  private final Form form;
  private final Products products;
  private final Foresight foresight;
  private final List<String> notes = new ArrayList<>();

  MixReader(Form form, Products products, Foresight foresight) {
    this.form = form;
    this.products = products;
    this.foresight = foresight;
  }

  /** The request, or empty with faults noted in the form. Does not finish the outermost form. */
  Optional<MixRequest> read() {
    int before = form.faults().size();
    String title = form.text("title").filter(t -> t.length() <= 80).orElse("Mix");
    UnitSystem units = units(form);
    SourceWater water =
        form.form("water")
            .map(w -> WaterReader.read(w, foresight))
            .orElseGet(this::noWater)
            .orElse(SourceWater.RAIN);
    List<Use> uses = uses();
    GoalReader.Goal goal = GoalReader.read(form, uses);
    Optional<Form> make = form.form("make");
    double celsius =
        make.flatMap(m -> m.read("temperature", Amounts::celsius, 0, 45, "°C")).orElse(20.0);
    double scale = make.flatMap(m -> m.read("scale", Amounts::grams, 1e-3, 1000, "g")).orElse(1.0);
    Meter meter = form.form("meter").map(MixReader::meter).orElse(Meter.USUAL);
    AcidDose acid = form.form("acid").map(a -> AcidReader.read(a, water)).orElse(AcidDose.NONE);
    Optional<StockWish> stock = form.form("stock").flatMap(s -> StockReader.read(s, uses));
    Size size = size(make, stock);
    make.ifPresent(Form::finish);
    if (form.faults().size() > before) {
      return Optional.empty();
    }
    return Optional.of(
        new MixRequest(
            title,
            units,
            water,
            goal.frequency(),
            goal.total(),
            goal.added(),
            goal.wishes(),
            uses,
            size.litres(),
            size.pots(),
            size.perPot(),
            celsius,
            scale,
            meter,
            acid,
            stock,
            notes));
  }

  static UnitSystem units(Form form) {
    return form.choice(
            "units",
            Map.of(
                "metric", UnitSystem.METRIC, "us", UnitSystem.US, "imperial", UnitSystem.IMPERIAL))
        .orElse(UnitSystem.METRIC);
  }

  private Optional<SourceWater> noWater() {
    form.fault(
        "water",
        "is missing",
        "give its measured strength, the report's figures, or choose rain (in a file: kind = \"rain\")");
    return Optional.empty();
  }

  /** Straight salts, the demo feed, and the products of the form. */
  static Products products(Form form, Foresight foresight) {
    Products products = new Products();
    ProductReader reader = new ProductReader(foresight);
    for (Form each : form.forms("product", MOST_PRODUCTS)) {
      Optional<Product> product = reader.read(each);
      if (product.isEmpty()) {
        // told once: whoever names it is not told again
        each.text("id").ifPresent(products::addFaulty);
      } else if (!products.add(product.get())) {
        each.fault("id", "is taken by another product", "choose another name for it");
      }
    }
    return products;
  }

  private List<Use> uses() {
    List<Use> uses = new ArrayList<>();
    form.missing("use", "choose at least one product");
    for (Form each : form.forms("use", MOST_PRODUCTS)) {
      each.missing("product", "choose a fertilizer");
      Optional<Product> product = each.read("product", products::find);
      double purity = ProductReader.purity(each);
      double part = each.read("part", Amounts::number, 0.001, 1000, "").orElse(1.0);
      double rate =
          each.read("rate", Amounts::gramsPerLitre, 0, MOST_GRAMS_PER_LITRE, "g/L")
              .orElse(Double.NaN);
      double most =
          each.read("most", Amounts::gramsPerLitre, 0, MOST_GRAMS_PER_LITRE, "g/L")
              .orElse(MOST_GRAMS_PER_LITRE);
      double spoon = each.read("spoon", Amounts::grams, 0.1, 1000, "g").orElse(Double.NaN);
      each.finish();
      String field = "use[%d]".formatted(uses.size() + 1);
      product.ifPresent(
          p -> uses.add(new Use(field, p.withPurity(purity), part, rate, most, spoon)));
    }
    return uses;
  }

  static Meter meter(Form form) {
    SaltsUnit unit = form.read("unit", SaltsUnit::parse).orElse(SaltsUnit.MILLISIEMENS);
    boolean raw = form.choice("compensates", Map.of("no", true, "yes", false)).orElse(false);
    double percent =
        form.read("percent-per-kelvin", Amounts::percent, 0, 4, "%/K")
            .orElse(Meter.USUAL.percentPerKelvin());
    form.finish();
    return new Meter(unit, !raw, percent);
  }

  private record Size(double litres, int pots, double perPot) {}

  private Size size(Optional<Form> make, Optional<StockWish> stock) {
    Optional<Double> litres = make.flatMap(m -> m.read("volume", Amounts::litres, 0.05, 1e6, "L"));
    Optional<Double> pots = make.flatMap(m -> m.read("pots", Amounts::number, 1, 1e6, ""));
    Optional<Double> pot = make.flatMap(m -> m.read("pot", Amounts::litres, 0.02, 1000, "L"));
    Optional<Double> given = make.flatMap(m -> m.read("per-pot", Amounts::litres, 0.005, 200, "L"));
    double perPot = given.orElse(pot.map(size -> WATERING_SHARE * size).orElse(0.0));
    if (given.isEmpty() && pot.isPresent()) {
      notes.add(
          "a watering is taken as a fifth of the pot's volume, run-off included; weigh a pot before"
              + " and after to know better");
    }
    int count = pots.map(Double::intValue).orElse(0);
    if (litres.isPresent() || stock.isPresent()) {
      double all = litres.orElseGet(() -> stock.map(s -> s.litres() * s.makes()).orElse(0.0));
      return new Size(all, count, perPot);
    }
    if (count > 0 && perPot > 0) {
      return new Size(count * perPot, count, perPot);
    }
    if (make.map(m -> !m.has("volume") && !m.has("pots")).orElse(true)) {
      form.fault(
          "make", "says no volume", "give volume = \"600 L\", or pots and the size of a pot");
    } else if (count > 0) {
      make.ifPresent(m -> m.missing("pot", "give the size of a pot, or per-pot"));
    }
    return new Size(1, 0, 0);
  }
}
