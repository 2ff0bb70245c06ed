package feedwitness.app;

import feedwitness.feed.Fallback;
import feedwitness.feed.MixOutcome;
import feedwitness.feed.Supplement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a recipe asks for beside its mix, as text. */
final class MixAsideText {
  private final List<String> lines = new ArrayList<>();

  private MixAsideText() {}

  static List<String> lines(MixOutcome.Mixed mixed) {
    MixAsideText text = new MixAsideText();
    mixed.checks().forEach(check -> text.item("Check: ", check.text()));
    mixed.supplement().ifPresent(text::supplement);
    mixed.fallback().ifPresent(text::fallback);
    return text.lines;
  }

  private void supplement(Supplement supplement) {
    lines.add("");
    item(
        "Supplement: ",
        format(
            "%.3f g/L of %s%s, adds %.2f mS/cm",
            supplement.gramsPerLitre(),
            supplement.title(),
            Double.isNaN(supplement.grams()) ? "" : format(" (%.1f g)", supplement.grams()),
            supplement.strengthAdded()));
    for (Supplement.Line line : supplement.adds()) {
      String oxide =
          line.oxide().isEmpty() ? "" : format(" (%s %.1f)", line.oxide(), line.addsOxide());
      String ceiling =
          Double.isNaN(line.ceiling()) ? "" : format(", usual ceiling %.1f", line.ceiling());
      item(
          "  - ",
          format(
              "%s +%.2f mg/L%s, then %.2f%s",
              line.symbol(), line.adds(), oxide, line.total(), ceiling));
    }
    supplement.notes().forEach(note -> item("  - ", note));
    item("  Journal: ", supplement.journal());
    supplement.cautions().forEach(caution -> item("  - ", caution));
  }

  private void fallback(Fallback fallback) {
    lines.add("");
    String grams =
        Double.isNaN(fallback.grams()) ? "" : format(": %.1f g for the volume", fallback.grams());
    item("", fallback.text() + grams);
    fallback.reasons().forEach(reason -> item("  - ", reason));
    fallback.cautions().forEach(caution -> item("  - ", caution));
  }

  private void item(String first, String text) {
    lines.addAll(MixText.wrap(first, text));
  }

  private static String format(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
