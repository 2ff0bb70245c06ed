package feedwitness.feed;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * A product of one's own, a {@code product} form: a straight salt by formula and purity, or a
 * compound feed by the percentages of its label, oxide or element by the name they are printed
 * with.
 */
final class ProductReader {
  private static final Pattern ID = Pattern.compile("[a-z][a-z0-9-]{0,39}");

  /** Labels round to a tenth; three forms and a sum. */
  private static final double ROUNDING = 0.2;

  private static final int LONGEST_TITLE = 60;
  private static final Set<String> NITROGEN = Set.of("N", "n");

  private final Foresight foresight;

  ProductReader(Foresight foresight) {
    this.foresight = foresight;
  }

  Optional<Product> read(Form form) {
    int before = form.faults().size();
    form.missing("id", "give it a short name for recipes, such as bench-feed");
    Optional<String> id = form.read("id", ProductReader::id);
    String title = form.read("title", ProductReader::title).or(() -> id).orElse("own product");
    Optional<Product> product =
        form.has("formula")
            ? salt(form, id.orElse("own"), title)
            : compound(form, id.orElse("own"), title);
    Optional<Product> fitted = product.flatMap(p -> new Fitting(foresight).read(form, p));
    form.finish();
    return form.faults().size() > before ? Optional.empty() : fitted;
  }

  private static String id(String text) {
    if (!ID.matcher(text).matches()) {
      throw new IllegalArgumentException(
          "is not 1 to 40 of a-z, 0-9 and -, a letter first; write for example "
              + text.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-"));
    }
    return text;
  }

  private static String title(String text) {
    if (text.length() > LONGEST_TITLE || text.chars().anyMatch(Character::isISOControl)) {
      throw new IllegalArgumentException(
          "is not one line of %d characters at most; shorten it".formatted(LONGEST_TITLE));
    }
    return text;
  }

  private static Optional<Product> salt(Form form, String id, String title) {
    double purity = purity(form);
    return form.read("formula", SaltFormula::find)
        .map(salt -> salt.product().withPurity(purity))
        .map(
            p ->
                new Product(
                    id,
                    title,
                    p.perGram(),
                    p.nutrients(),
                    p.density(),
                    p.salt(),
                    0,
                    1,
                    p.mostPerLitre(),
                    p.labelRate(),
                    p.notes()));
  }

  /** Share; 1 unless given. */
  static double purity(Form form) {
    return form.read("purity", Amounts::percent, 50, 100, "%").orElse(100.0) / 100;
  }

  private static Optional<Product> compound(Form form, String id, String title) {
    form.missing("label", "copy the percentages of the label: N, nitrate-N, P2O5, K2O …");
    boolean byVolume = form.choice("by", Map.of("weight", false, "volume", true)).orElse(false);
    Optional<Double> density = form.read("density", Amounts::density, 0.7, 2, "g/mL");
    if (byVolume && !form.has("density")) {
      form.fault(
          "density",
          "is missing, but the label is by volume",
          "read it off the canister, or weigh a full measuring cup: grams over millilitres");
    }
    double most =
        form.read("most-in-stock", Amounts::gramsPerLitre, 1, 1000, "g/L").orElse(Double.NaN);
    Optional<Product.Rate> rate = form.read("label-rate", ProductReader::rate);
    Optional<Form> figures = form.form("label");
    Optional<Label> label =
        figures.flatMap(
            f -> label(f, form.texts("chelated", 10), byVolume ? density.orElse(1.0) : 1));
    return label.map(l -> l.product(id, title, density.orElse(Double.NaN), most, rate));
  }

  /** {@code 0.5 to 1.2 g/L}. */
  static Product.Rate rate(String text) {
    String[] parts = text.split("\\s*(?:\\bto\\b|–)\\s*", 2);
    double high = Amounts.gramsPerLitre(parts[parts.length - 1]);
    double low =
        parts.length == 1
            ? high
            : parts[0].matches(".*[a-zA-Z]")
                ? Amounts.gramsPerLitre(parts[0])
                : high * Amounts.number(parts[0]) / Amounts.written(parts[1]).number();
    if (!(low > 0 && low <= high && high <= 50)) {
      throw new IllegalArgumentException("is no range of rates; write for example 0.5 to 1.2 g/L");
    }
    return new Product.Rate(low, high);
  }

  private static Optional<Label> label(Form form, List<String> chelates, double density) {
    int before = form.faults().size();
    Map<Nutrient, Double> percent = new EnumMap<>(Nutrient.class);
    double sum = 0;
    for (String key : form.keys()) {
      if (NITROGEN.contains(key)) {
        continue;
      }
      Optional<Nutrient> oxide = Nutrient.ofOxide(key);
      Optional<Nutrient> nutrient = oxide.or(() -> Nutrient.of(key));
      if (nutrient.isEmpty()) {
        continue; // told by finish()
      }
      Optional<Double> value = form.read(key, Amounts::percent, 0, 100, "%");
      double factor = oxide.map(Nutrient::oxidePerElement).orElse(1.0);
      if (value.isPresent() && percent.put(nutrient.get(), value.get() / factor) != null) {
        form.fault(
            key,
            "stands there as oxide and as element",
            "keep the one that is printed on the label");
      }
      sum += value.orElse(0.0);
    }
    Optional<Double> total = form.read(form.has("n") ? "n" : "N", Amounts::percent, 0, 100, "%");
    double forms =
        percent.entrySet().stream()
            .filter(e -> e.getKey().isNitrogen())
            .mapToDouble(Map.Entry::getValue)
            .sum();
    double unassigned = nitrogen(form, total, forms);
    sum += unassigned;
    if (sum > 100) {
      form.fault(
          form.keys().get(0),
          "the percentages add up to %s, more than 100".formatted(Text.plain(sum)),
          "look for a slip of the decimal point");
    }
    form.finish();
    Set<Nutrient> chelated = chelated(form, chelates);
    if (form.faults().size() > before) {
      return Optional.empty();
    }
    percent.replaceAll((each, value) -> value / 100 / density);
    return Optional.of(new Label(percent, unassigned / 100 / density, chelated));
  }

  private static double nitrogen(Form form, Optional<Double> total, double forms) {
    if (total.isEmpty() || (forms > 0 && Math.abs(total.get() - forms) <= ROUNDING)) {
      return 0;
    }
    if (forms > total.get()) {
      form.fault(
          form.has("n") ? "n" : "N",
          "is less than its forms, which add up to %s %%".formatted(Text.plain(forms)),
          "nitrate-N, ammonium-N and urea-N must add up to N; copy them again from the label");
    } else if (forms > 0) {
      form.fault(
          form.has("n") ? "n" : "N",
          "is more than its forms, which add up to %s %%".formatted(Text.plain(forms)),
          "a form is missing (urea-N?); nitrate-N, ammonium-N and urea-N must add up to N");
    }
    return total.get();
  }

  private static Set<Nutrient> chelated(Form form, List<String> names) {
    Set<Nutrient> chelated = EnumSet.noneOf(Nutrient.class);
    for (String name : names) {
      Optional<Nutrient> element =
          Nutrient.of(name).filter(n -> n.isTrace() && n != Nutrient.B && n != Nutrient.MO);
      element.ifPresent(chelated::add);
      if (element.isEmpty()) {
        form.fault(
            "chelated", "names '%s'".formatted(name), "chelated can be Fe, Mn, Zn and Cu only");
      }
    }
    return chelated;
  }
}
