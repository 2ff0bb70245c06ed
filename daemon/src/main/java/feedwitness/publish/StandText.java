package feedwitness.publish;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;

/** How a service stands, in lines for a terminal; made of its own answers. */
final class StandText {
  private StandText() {}

  /** What needs an answer first; one line of its own if there is nothing. */
  static List<String> alarms(JsonNode list) {
    List<String> lines = new ArrayList<>();
    JsonNode flood = list.path("flood");
    if (flood.isObject()) {
      lines.add("Many at once: " + flood.path("words").asText());
    }
    for (JsonNode alarm : list.path("alarms")) {
      lines.add(
          "%-7s %-14s %s (%s)"
              .formatted(
                  alarm.path("priority").asText(),
                  stand(alarm),
                  alarm.path("words").asText(),
                  alarm.path("id").asText()));
      if (alarm.path("needs_answer").asBoolean()) {
        lines.add("        what to do: " + alarm.path("what_to_do").asText());
      }
    }
    if (lines.isEmpty()) {
      lines.add("No alarms.");
    }
    return lines;
  }

  private static String stand(JsonNode alarm) {
    if (alarm.path("shelved").isObject()) {
      return "shelved";
    }
    return alarm.path("out_of_service").isObject()
        ? "out of service"
        : alarm.path("state").asText();
  }

  /** One line for each point. */
  static List<String> points(JsonNode points) {
    List<String> lines = new ArrayList<>();
    for (JsonNode point : points) {
      boolean reads = point.path("state").asText().equals("reading");
      lines.add(
          "%-12s %s"
              .formatted(point.path("name").asText(), reads ? reading(point) : missing(point)));
    }
    if (lines.isEmpty()) {
      lines.add("No measuring point yet.");
    }
    return lines;
  }

  private static String reading(JsonNode point) {
    List<String> words = new ArrayList<>();
    JsonNode strength = point.path("conductivity25_mS_cm");
    if (strength.isNumber()) {
      words.add(
          String.format(
              java.util.Locale.ROOT,
              "%.2f ± %.2f mS/cm at 25 °C",
              strength.asDouble(),
              point.path("uncertainty_mS_cm").asDouble()));
    }
    if (point.path("temperature_C").isNumber()) {
      words.add(
          String.format(java.util.Locale.ROOT, "%.1f °C", point.path("temperature_C").asDouble()));
    }
    words.add(point.path("time").isNull() ? "undated" : point.path("time").asText());
    point.path("flag_words").forEach(flag -> words.add(flag.asText()));
    return String.join(", ", words);
  }

  private static String missing(JsonNode point) {
    JsonNode why = point.path("missing");
    return why.isObject()
        ? "no reading: " + why.path("words").asText() + "; " + why.path("detail").asText()
        : "no reading yet";
  }

  /** One line for each feed line; none if there are none. */
  static List<String> feedLines(JsonNode list) {
    List<String> lines = new ArrayList<>();
    for (JsonNode line : list.path("feed_lines")) {
      List<String> words = new ArrayList<>(List.of(line.path("state_words").asText()));
      if (line.path("measured_mS_cm").isNumber() && line.path("expected_mS_cm").isNumber()) {
        words.add(
            String.format(
                java.util.Locale.ROOT,
                "last event %.2f mS/cm, expected %.2f (%s)",
                line.path("measured_mS_cm").asDouble(),
                line.path("expected_mS_cm").asDouble(),
                line.path("expected_from_words").asText()));
      }
      if (line.path("ratio").isNumber()) {
        words.add(
            String.format(
                java.util.Locale.ROOT,
                "1 L of stock makes %.0f ± %.0f L",
                line.path("ratio").asDouble(),
                line.path("ratio_plus_minus").asDouble()));
      }
      lines.add("%-12s %s".formatted(line.path("name").asText(), String.join("; ", words)));
      if (!line.path("told").asText().isEmpty()) {
        lines.add("             " + line.path("told").asText());
      }
    }
    return lines;
  }

  /** The first line: how the service is. */
  static List<String> health(JsonNode health) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "Feedwitness %s, running since %s"
            .formatted(health.path("version").asText(), health.path("started").asText()));
    health.path("trouble").forEach(trouble -> lines.add("trouble: " + trouble.asText()));
    return lines;
  }
}
