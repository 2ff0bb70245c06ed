package feedwitness.publish;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Checks in lines for a terminal. */
public final class CheckText {
  private static final String METER = "meter/";

  private CheckText() {}

  /**
   * How a probe or meter stands.
   *
   * @param phase of the open check; empty if none is open
   * @param results so far
   * @param lines all of it, for people
   */
  public record Standing(String phase, int results, List<String> lines) {
    public Standing {
      lines = List.copyOf(lines);
    }
  }

  static String path(String subject) {
    boolean meter = subject.startsWith(METER);
    String name = meter ? subject.substring(METER.length()) : subject;
    return Routes.API
        + (meter ? "/checks/meter/" : "/checks/probe/")
        + URLEncoder.encode(name, StandardCharsets.UTF_8).replace("+", "%20");
  }

  static List<String> overview(JsonNode checks) {
    List<String> lines = new ArrayList<>();
    for (JsonNode each : checks.path("subjects")) {
      String prefix = each.path("kind").asText().equals("meter") ? METER : "";
      lines.add(
          "%s%s: %s%s"
              .formatted(
                  prefix,
                  each.path("name").asText(),
                  each.path("checking").asBoolean()
                      ? "a check is open"
                      : each.path("words").asText(),
                  each.path("status").asText().equals("never-checked")
                      ? ""
                      : "; left: "
                          + each.path("verdict").asText().replace("cant-tell", "can't tell")));
    }
    lines.add("");
    lines.add(checks.path("shelf").isEmpty() ? "no standard is on the shelf" : "on the shelf:");
    for (JsonNode bottle : checks.path("shelf")) {
      lines.add("  %s: %s".formatted(bottle.path("name").asText(), bottle.path("title").asText()));
      bottle.path("warnings").forEach(warning -> lines.add("    " + warning.asText()));
    }
    return lines;
  }

  static Standing done(JsonNode done) {
    Standing now = standing(done.path("now"));
    List<String> lines = new ArrayList<>(List.of(done.path("words").asText()));
    lines.addAll(now.lines());
    return new Standing(now.phase(), now.results(), lines.stream().distinct().toList());
  }

  static Standing standing(JsonNode detail) {
    JsonNode open = detail.path("open");
    List<String> lines = new ArrayList<>();
    String trouble = detail.at("/stand/trouble").asText("");
    if (!trouble.isEmpty() && !trouble.equals("null")) {
      lines.add(trouble);
    }
    if (open.isNull() || open.isMissingNode()) {
      lines.add(detail.at("/stand/words").asText());
      lines.add(detail.at("/chart/words").asText());
      String aside = detail.at("/stand/aside").asText("");
      if (!aside.isEmpty() && !aside.equals("null")) {
        lines.add("put the probe back; its readings do not count yet");
      }
      detail
          .path("doubted")
          .forEach(range -> lines.add("in doubt: " + range.path("words").asText()));
      return new Standing("", 0, lines);
    }
    open.path("results").forEach(result -> lines.add(result.asText()));
    String phase = open.path("phase").asText();
    if (phase.equals("settling")) {
      lines.add(open.path("settling").asText());
    }
    if (phase.equals("round-done")) {
      lines.add("verdict: " + open.path("verdict").asText().replace("cant-tell", "can't tell"));
      if (!open.path("verdict").asText().equals("pass")) {
        lines.add("adjustment: " + open.path("adjustment").asText());
      }
    }
    lines.add("now: " + open.path("guide").asText());
    return new Standing(phase, open.path("results").size(), lines);
  }
}
