package feedwitness.app;

import feedwitness.feed.MixOutcome;
import feedwitness.feed.MixSheet;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/** A mixing sheet as a table: kind, name, amount, unit, note. */
final class MixTable {
  private static final int DIGITS = 6;

  private final List<String> lines = new ArrayList<>();

  private MixTable() {}

  static List<String> lines(MixOutcome.Mixed mixed) {
    MixTable table = new MixTable();
    table.lines.add("kind,name,amount,unit,note");
    mixed.sheet().ifPresent(table::sheet);
    mixed.checks().forEach(c -> table.row("check", c.kind(), c.found(), "", c.text()));
    mixed
        .supplement()
        .ifPresent(
            s ->
                s.adds()
                    .forEach(
                        line ->
                            table.row(
                                "supplement", line.symbol(), line.adds(), "mg/L", s.product())));
    mixed
        .fallback()
        .ifPresent(f -> table.row("fallback", "rate", f.gramsPerLitre(), "g/L", f.text()));
    return table.lines;
  }

  private void sheet(MixSheet sheet) {
    row("volume", "feed", sheet.volume().litres(), "L", sheet.frequency());
    row("strength", "total", sheet.strength().total(), "mS/cm", "at 25 °C");
    row("strength", "added by feed", sheet.strength().added(), "mS/cm", "at 25 °C");
    row("strength", "water", sheet.strength().water(), "mS/cm", "at 25 °C");
    row(
        "strength",
        "uncertainty",
        sheet.strength().uncertainty(),
        "mS/cm",
        "one standard deviation");
    row("meter", "shows", sheet.meter().shown(), sheet.meter().unit(), sheet.meter().text());
    sheet.acid().ifPresent(a -> row("acid", a.kind(), a.millilitres(), "mL", a.text()));
    for (MixSheet.Weighing each : sheet.weigh()) {
      String where = each.stock().isEmpty() ? "tank" : each.stock();
      row("weigh", each.product(), each.grams(), "g", where);
    }
    for (MixSheet.NutrientLine each : sheet.nutrients()) {
      row("nutrient", each.symbol(), each.total(), "mg/L", each.conducts() ? "" : "unseen");
      if (!each.oxide().isEmpty()) {
        row("nutrient", each.oxide(), each.totalOxide(), "mg/L", "");
      }
    }
    for (MixSheet.Stock each : sheet.stocks()) {
      row("stock", each.name(), each.makes(), "L from 1 L", each.check());
    }
    sheet.binding().forEach(text -> note("binding", text));
    sheet.notes().forEach(text -> note("note", text));
    sheet.cautions().forEach(text -> note("caution", text));
  }

  private void row(String kind, String name, double amount, String unit, String note) {
    String number =
        Double.isFinite(amount)
            ? new BigDecimal(amount).round(new MathContext(DIGITS)).toPlainString()
            : "";
    lines.add(CsvLine.of(List.of(kind, name, number, unit, note)));
  }

  private void note(String kind, String text) {
    lines.add(CsvLine.of(List.of(kind, "", "", "", text)));
  }
}
