package feedwitness.feed;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Feeding without a meter, or with one not to be trusted: the low end of the label's rate, and less
 * beside coated granules. A fallback, and called one.
 *
 * @param gramsPerLitre advised
 * @param grams for the volume; NaN without one
 * @param granulesLeft share of the coated granules still to come, 0 to 1; NaN without any
 */
public record Fallback(
    String text,
    double gramsPerLitre,
    double grams,
    double granulesLeft,
    List<String> reasons,
    List<String> cautions) {
  private static final double DAYS_PER_MONTH = 30.4;

  /** Fresh granules leave this share of the low end for liquid feed. */
  private static final double BESIDE_FRESH = 0.25;

  /** Release of coated granules about doubles with ten kelvin. */
  private static final double TEN_KELVIN = 2;

  public Fallback {
    reasons = List.copyOf(reasons);
    cautions = List.copyOf(cautions);
  }

  static Optional<Fallback> read(Form form, Products products) {
    int before = form.faults().size();
    Optional<Product> product = form.read("product", products::find);
    Optional<Product.Rate> rate =
        form.read("label-rate", ProductReader::rate).or(() -> product.flatMap(Product::labelRate));
    if (rate.isEmpty() && !form.has("label-rate")) {
      form.fault("label-rate", "is missing", "copy it from the label, such as 0.5 to 1.2 g/L");
    }
    form.missing("frequency", "how often the label says, such as weekly");
    Optional<Frequency> frequency = form.choice("frequency", Frequency.choices());
    double litres = form.read("volume", Amounts::litres, 0.05, 1e6, "L").orElse(Double.NaN);
    List<String> reasons = new ArrayList<>();
    double left = form.form("granules").map(g -> granules(g, reasons)).orElse(Double.NaN);
    form.finish();
    if (form.faults().size() > before) {
      return Optional.empty();
    }
    double low = rate.orElseThrow().low();
    double advised = Double.isNaN(left) ? low : low * (1 - (1 - BESIDE_FRESH) * left);
    reasons.add(
        0,
        "without a meter to trust, the low end of the label's rate: %s g/L"
            .formatted(Text.plain(low)));
    return Optional.of(
        new Fallback(
            "Fallback: %s g/L, %s"
                .formatted(Text.figures(advised, 3), frequency.orElseThrow().words()),
            advised,
            advised * litres,
            left,
            reasons,
            List.of(
                Cautions.LABEL_FIRST,
                "This is a fallback, not a measurement: get the meter checked in a standard.")));
  }

  private static double granules(Form form, List<String> reasons) {
    int before = form.faults().size();
    String name = form.text("product").orElse("coated granules");
    form.text("rate");
    form.missing("applied", "the day they were mixed in, such as 2026-03-01");
    form.missing("today", "the day of the advice");
    form.missing("longevity", "months, as the bag says");
    Optional<LocalDate> applied = form.read("applied", Fallback::date);
    Optional<LocalDate> today = form.read("today", Fallback::date);
    Optional<Double> months = form.read("longevity", Fallback::months, 1, 24, "months");
    double stated = form.read("at", Amounts::celsius, 10, 35, "°C").orElse(21.0);
    double pot = form.read("pot-temperature", Amounts::celsius, 0, 40, "°C").orElse(stated);
    form.finish();
    if (form.faults().size() > before) {
      return Double.NaN;
    }
    double days = ChronoUnit.DAYS.between(applied.orElseThrow(), today.orElseThrow());
    if (days < 0) {
      form.fault("applied", "is after today", "exchange the two days");
      return Double.NaN;
    }
    double lasts =
        months.orElseThrow() * DAYS_PER_MONTH * Math.pow(TEN_KELVIN, (stated - pot) / 10);
    double left = Math.max(0, 1 - days / lasts);
    reasons.add(
        "%s: %s days old, lasting about %s days at %s °C (bag: %s months at %s °C); about %s %% to come"
            .formatted(
                name,
                Text.plain(days),
                Text.fixed(lasts, 0),
                Text.plain(pot),
                Text.plain(months.get()),
                Text.plain(stated),
                Text.fixed(100 * left, 0)));
    return left;
  }

  private static double months(String text) {
    Amounts.Written written = Amounts.written(text);
    if (!written.unit().isEmpty() && !written.unit().startsWith("month")) {
      throw new IllegalArgumentException("is no number of months; write for example 6 months");
    }
    return written.number();
  }

  private static LocalDate date(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException("is no date; write year-month-day, such as 2026-03-01", e);
    }
  }
}
