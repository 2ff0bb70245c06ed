package feedwitness.feed;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A single salt given beside the feed, for one nutrient.
 *
 * @param gramsPerLitre of it
 * @param grams for the volume; NaN without one
 * @param adds mg/L of each nutrient, with the usual ceiling
 * @param strengthAdded mS/cm at 25 °C
 * @param journal one line to keep
 */
public record Supplement(
    String product,
    String title,
    double gramsPerLitre,
    double grams,
    List<Line> adds,
    double strengthAdded,
    List<String> notes,
    String journal,
    List<String> cautions) {

  /** mg/L in a feed given at every watering that ordinary programmes seldom pass: orientation. */
  private static final Map<Nutrient, Double> USUAL_CEILING = new EnumMap<>(Nutrient.class);

  static {
    USUAL_CEILING.put(Nutrient.AMMONIUM_N, 60.0);
    USUAL_CEILING.put(Nutrient.P, 60.0);
    USUAL_CEILING.put(Nutrient.K, 300.0);
    USUAL_CEILING.put(Nutrient.CA, 250.0);
    USUAL_CEILING.put(Nutrient.MG, 80.0);
    USUAL_CEILING.put(Nutrient.S, 150.0);
    USUAL_CEILING.put(Nutrient.NA, 70.0);
    USUAL_CEILING.put(Nutrient.CL, 100.0);
    USUAL_CEILING.put(Nutrient.FE, 5.0);
    USUAL_CEILING.put(Nutrient.MN, 2.0);
    USUAL_CEILING.put(Nutrient.ZN, 1.0);
    USUAL_CEILING.put(Nutrient.CU, 0.3);
    USUAL_CEILING.put(Nutrient.B, 0.5);
    USUAL_CEILING.put(Nutrient.MO, 0.1);
  }

  public Supplement {
    adds = List.copyOf(adds);
    notes = List.copyOf(notes);
    cautions = List.copyOf(cautions);
  }

  /**
   * What it adds of one nutrient, mg/L.
   *
   * @param total with the feed's and the water's own
   * @param ceiling usual, NaN where none is
   */
  public record Line(
      String symbol, double adds, String oxide, double addsOxide, double total, double ceiling) {}

  /**
   * Reads the form and works it out.
   *
   * @param base what it is given with: water, or a feed
   */
  static Optional<Supplement> read(Form form, Products products, Blend base, Foresight foresight) {
    int before = form.faults().size();
    form.missing("product", "choose a straight salt");
    Optional<Product> product = form.read("product", products::find);
    double purity = ProductReader.purity(form);
    Optional<Nutrient> nutrient = form.read("nutrient", Supplement::nutrient);
    Optional<Double> wanted = form.read("adds", Amounts::milligramsPerLitre, 0.001, 1000, "mg/L");
    Optional<Double> rate = form.read("rate", Amounts::gramsPerLitre, 0.0001, 20, "g/L");
    double litres = form.read("volume", Amounts::litres, 0.05, 1e6, "L").orElse(Double.NaN);
    int treated = form.read("pots", Amounts::number, 1, 1e6, "").map(Double::intValue).orElse(0);
    int untreated =
        form.read("untreated", Amounts::number, 0, 1e6, "").map(Double::intValue).orElse(0);
    Optional<LocalDate> review = form.read("review", Supplement::date);
    if (rate.isEmpty() && (wanted.isEmpty() || nutrient.isEmpty())) {
      form.fault("rate", "is missing", "give a rate in g/L, or a nutrient and the mg/L it adds");
    }
    form.finish();
    if (form.faults().size() > before) {
      return Optional.empty();
    }
    Product pure = product.orElseThrow().withPurity(purity);
    double held = nutrient.map(n -> pure.nutrients().of(n)).orElse(0.0);
    if (rate.isEmpty() && held == 0) {
      form.fault("nutrient", "is not in " + pure.id(), "choose a salt that holds it");
      return Optional.empty();
    }
    double grams = rate.orElseGet(() -> wanted.orElseThrow() / 1000 / held);
    return Optional.of(
        new Maker(pure, grams, litres, treated, untreated, review).make(base, foresight));
  }

  private static Nutrient nutrient(String text) {
    return Nutrient.of(text)
        .or(() -> Nutrient.ofOxide(text))
        .orElseThrow(() -> new IllegalArgumentException("is no nutrient; write Mg, K, Fe …"));
  }

  private static LocalDate date(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException("is no date; write year-month-day, such as 2026-06-14", e);
    }
  }

  private record Maker(
      Product product,
      double gramsPerLitre,
      double litres,
      int treated,
      int untreated,
      Optional<LocalDate> review) {

    Supplement make(Blend base, Foresight foresight) {
      List<Line> lines = new ArrayList<>();
      List<String> notes = new ArrayList<>();
      for (Map.Entry<Nutrient, Double> each : product.nutrients().amounts().entrySet()) {
        if (each.getValue() > 0) {
          Line line = line(each.getKey(), base.nutrients());
          lines.add(line);
          if (line.total() > line.ceiling()) {
            notes.add(
                "%s comes to %s mg/L; ordinary feeds stay below %s: give less, or seldom"
                    .formatted(
                        line.symbol(), Text.figures(line.total(), 3), Text.plain(line.ceiling())));
          }
        }
      }
      if (treated == 0 || untreated == 0) {
        notes.add("leave a few pots untreated beside the treated: only they can tell what it did");
      }
      if (review.isEmpty()) {
        notes.add("set a day to look at them again, two to four weeks on");
      }
      double before = foresight.at25(base.perLitre());
      double after = foresight.at25(base.perLitre().plus(gramsPerLitre, product.conducting()));
      return new Supplement(
          product.id(),
          product.title(),
          gramsPerLitre,
          gramsPerLitre * litres,
          lines,
          after - before,
          notes,
          journal(lines),
          List.of(
              Cautions.LABEL_FIRST,
              "Pale leaves are often pH, not hunger: measure pH first.",
              "Conductivity cannot tell one salt from another: a wrong bag reads right."));
    }

    private Line line(Nutrient nutrient, Nutrients base) {
      double adds = 1000 * gramsPerLitre * product.nutrients().of(nutrient);
      return new Line(
          nutrient.symbol(),
          adds,
          nutrient.oxide().orElse(""),
          nutrient.oxide().isPresent() ? adds * nutrient.oxidePerElement() : Double.NaN,
          base.of(nutrient) + adds,
          USUAL_CEILING.getOrDefault(nutrient, Double.NaN));
    }

    private String journal(List<Line> lines) {
      StringBuilder text = new StringBuilder("supplement: ");
      text.append("%s %s g/L".formatted(product.id(), Text.figures(gramsPerLitre, 3)));
      lines.forEach(
          line ->
              text.append(", %s +%s mg/L".formatted(line.symbol(), Text.figures(line.adds(), 3))));
      if (treated > 0) {
        text.append("; %d pots treated, %d untreated".formatted(treated, untreated));
      }
      review.ifPresent(day -> text.append("; review ").append(day));
      return text.toString();
    }
  }
}
