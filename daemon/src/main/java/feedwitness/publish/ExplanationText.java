package feedwitness.publish;

import feedwitness.measurement.Explanation;
import feedwitness.publish.ExplanationJson.LineJson;
import feedwitness.publish.ExplanationJson.StepJson;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** An explanation for a terminal, ours or as a running service sent it. */
public final class ExplanationText {
  private static final int WIDTH = 96;
  private static final int MARGIN = 14;
  private static final DateTimeFormatter WALL =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss.SSS zzz", java.util.Locale.ROOT);

  private ExplanationText() {}

  /** Lines of text; times are in {@code zone}. */
  public static List<String> of(Explanation explanation, ZoneId zone) {
    return of(ExplanationJson.of(explanation), zone);
  }

  /**
   * The same from the answer of a running service.
   *
   * @throws IllegalArgumentException if it is no explanation
   */
  public static List<String> of(String json, ZoneId zone) {
    return of(Json.read(json, ExplanationJson.class), zone);
  }

  /** What a running service said against a request, or the whole answer if it is no such thing. */
  public static String problem(String json) {
    return Json.read(json, Refusal.class).detail();
  }

  /** Of a problem (RFC 9457), all that is wanted here. */
  @com.fasterxml.jackson.annotation.JsonIgnoreProperties(ignoreUnknown = true)
  record Refusal(String detail) {}

  private static List<String> of(ExplanationJson explained, ZoneId zone) {
    List<String> lines = new ArrayList<>();
    String time = explained.time();
    lines.add(
        "%s, %s (record %s)"
            .formatted(
                explained.point(),
                time == null ? "undated" : WALL.format(Instant.parse(time).atZone(zone)),
                explained.id()));
    lines.add(
        explained.conductivity25() == null
            ? "no value at 25 °C"
            : "%s mS/cm at 25 °C ± %s"
                .formatted(plain(explained.conductivity25()), plain(explained.uncertainty())));
    lines.add("");
    for (StepJson step : explained.steps()) {
      wrap(step.step(), step.words(), lines);
    }
    if (!explained.budget().isEmpty()) {
      lines.add("");
      lines.addAll(table(explained.budget()));
    }
    lines.add("");
    lines.add("basis         " + explained.basis());
    return List.copyOf(lines);
  }

  private static void wrap(String label, String words, List<String> lines) {
    StringBuilder line = new StringBuilder("%-13s".formatted(label));
    for (String word : words.split(" ", -1)) {
      if (line.length() > MARGIN && line.length() + 1 + word.length() > WIDTH) {
        lines.add(line.toString());
        line = new StringBuilder(" ".repeat(MARGIN - 1));
      }
      line.append(' ').append(word);
    }
    lines.add(line.toString());
  }

  private static List<String> table(List<LineJson> budget) {
    List<String> lines = new ArrayList<>();
    String row = "%-40s %22s %8s %13s %12s %6s";
    lines.add(row.formatted("doubt from", "stated", "÷", "× sensitivity", "= ± mS/cm", "share"));
    for (LineJson line : budget) {
      lines.add(
          row.formatted(
                  line.words() + (line.assumed() ? " (assumed)" : ""),
                  plain(line.value()) + " " + line.unit(),
                  rounded(line.divisor(), 3),
                  rounded(line.sensitivity(), 4),
                  rounded(line.contribution(), 5),
                  share(line.share()))
              .stripTrailing());
    }
    return lines;
  }

  private static String plain(@Nullable BigDecimal number) {
    return number == null ? "unknown" : number.toPlainString();
  }

  private static String rounded(@Nullable BigDecimal number, int decimals) {
    return number == null
        ? "unknown"
        : number.setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
  }

  private static String share(@Nullable BigDecimal share) {
    return share == null ? "" : share.movePointRight(2).setScale(0, RoundingMode.HALF_EVEN) + " %";
  }
}
