package feedwitness.app;

import feedwitness.feed.MixOutcome;
import feedwitness.feed.MixSheet;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A mixing sheet as one page of text, to be printed and written on. */
final class MixText {
  private static final int WIDTH = 78;

  private final MixSheet sheet;
  private final List<String> lines = new ArrayList<>();

  private MixText(MixSheet sheet) {
    this.sheet = sheet;
  }

  static List<String> lines(MixOutcome.Mixed mixed) {
    List<String> lines = new ArrayList<>(mixed.sheet().map(MixText::sheet).orElse(List.of()));
    lines.addAll(MixAsideText.lines(mixed));
    return lines;
  }

  private static List<String> sheet(MixSheet sheet) {
    MixText text = new MixText(sheet);
    text.head();
    text.weigh();
    text.work();
    text.nutrients();
    text.list("Not met", sheet.binding());
    text.list("Notes", sheet.notes());
    text.list("Cautions", sheet.cautions());
    text.add("");
    text.add("Mixed on ____________ by ____________   measured ________ at ______ °C   pH ______");
    return text.lines;
  }

  private void head() {
    MixSheet.Strength strength = sheet.strength();
    add(sheet.title());
    add("=".repeat(Math.min(WIDTH, sheet.title().length())));
    add("%s, given %s".formatted(sheet.volume().text(), sheet.frequency()));
    add(
        format(
            "Strength %.2f mS/cm at 25 °C (± %.2f): water %.2f, added by feed %.2f",
            strength.total(), 2 * strength.uncertainty(), strength.water(), strength.added()));
    add("Your meter will show %s".formatted(sheet.meter().text()));
  }

  private void weigh() {
    add("");
    add("Weigh");
    for (MixSheet.Weighing each : sheet.weigh()) {
      wrapped(
          "  [ ] ",
          "%s of %s%s (%s g/L of feed)"
              .formatted(
                  each.text(),
                  each.title(),
                  each.stock().isEmpty() ? "" : ", into the " + each.stock(),
                  format("%.3f", each.gramsPerLitre())));
    }
    sheet.acid().ifPresent(acid -> wrapped("  [ ] ", acid.text()));
  }

  private void work() {
    add("");
    add("Work");
    for (MixSheet.Step step : sheet.steps()) {
      wrapped(format("  %2d. ", step.number()), step.text());
      if (!step.shown().isEmpty()) {
        add(
            format(
                "      then %.2f mS/cm at 25 °C; %.2f uncompensated; your meter: %s",
                step.at25(), step.atTank(), step.shown()));
      }
    }
    for (MixSheet.Stock stock : sheet.stocks()) {
      wrapped("  - ", stock(stock));
      wrapped("  - ", "Check: " + stock.check());
    }
  }

  private static String stock(MixSheet.Stock stock) {
    String dial = Double.isNaN(stock.dial()) ? "" : format(", dial %.1f", stock.dial());
    String pots = stock.servesPots() > 0 ? format(", %.0f pots", stock.servesPots()) : "";
    return format(
            "%s: one litre makes %s L (%s %%, 1 part to %s of water%s); a fill serves %.0f L%s",
            stock.name(),
            figures(stock.makes()),
            figures(stock.percent()),
            figures(stock.partsWater()),
            dial,
            stock.servesLitres(),
            pots)
        + format("; %.0f %% of saturation on the coldest night", 100 * stock.saturation());
  }

  private void nutrients() {
    add("");
    add(
        format(
            "%-12s %9s %9s %9s %9s   %s", "mg/L", "water", "feed", "total", "wanted", "as oxide"));
    for (MixSheet.NutrientLine each : sheet.nutrients()) {
      String wanted =
          Double.isNaN(each.wanted())
              ? ""
              : format(each.ceiling() ? "<= %.1f" : "%.1f", each.wanted());
      String oxide =
          each.oxide().isEmpty() ? "" : format("%s %.1f", each.oxide(), each.totalOxide());
      add(
          format(
                  "%-12s %9.1f %9.1f %9.1f %9s   %s%s",
                  each.symbol(),
                  each.fromWater(),
                  each.fromFeed(),
                  each.total(),
                  wanted,
                  oxide,
                  each.conducts() ? "" : "(conductivity cannot see it)")
              .stripTrailing());
    }
  }

  private void list(String title, List<String> texts) {
    if (!texts.isEmpty()) {
      add("");
      add(title);
      texts.forEach(text -> wrapped("  - ", text));
    }
  }

  private void wrapped(String first, String text) {
    lines.addAll(wrap(first, text));
  }

  /** Lines of bounded width, the further ones indented as the first. */
  static List<String> wrap(String first, String text) {
    List<String> wrapped = new ArrayList<>();
    String start = first;
    StringBuilder line = new StringBuilder(start);
    for (String word : text.split(" ", -1)) {
      if (line.length() > start.length() && line.length() + word.length() > WIDTH) {
        wrapped.add(line.toString().stripTrailing());
        start = " ".repeat(first.length());
        line = new StringBuilder(start);
      }
      line.append(word).append(' ');
    }
    wrapped.add(line.toString().stripTrailing());
    return wrapped;
  }

  private static String format(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }

  private static String figures(double value) {
    return new BigDecimal(value).round(new MathContext(4)).stripTrailingZeros().toPlainString();
  }

  private void add(String line) {
    lines.add(line);
  }
}
