package feedwitness.settings;

import feedwitness.quantity.PointName;
import feedwitness.site.AlarmRule;
import feedwitness.site.Strength;
import feedwitness.site.StrengthOf;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The {@code [[strength]]} and {@code [[alarm]]} tables, and points that are named elsewhere. */
final class AlarmsReader {
  static final Set<String> STRENGTH =
      Set.of("name", "title", "point", "conductivity", "of", "tolerance");
  static final Set<String> ALARM = Set.of("kind", "point", "priority", "on-delay", "off-delay");
  private static final Duration LONGEST_DELAY = Duration.ofDays(1);
  private static final int LONGEST_TITLE = 60;

  private final List<PlacedPoint> points;

  AlarmsReader(List<PlacedPoint> points) {
    this.points = points;
  }

  /** Notes sources that are no points. */
  void checkSources() {
    for (PlacedPoint placed : points) {
      placed
          .point()
          .limits()
          .source()
          .ifPresent(source -> known(placed.section(), "source", source));
    }
  }

  List<Strength> strengths(Section root) {
    List<Strength> strengths = new ArrayList<>();
    for (Section section : root.tables("strength", STRENGTH)) {
      strength(section)
          .ifPresent(
              strength -> {
                if (strengths.stream().anyMatch(other -> other.name().equals(strength.name()))) {
                  section.problem(
                      "name", "another strength has this name", "give each a name of its own");
                }
                strengths.add(strength);
              });
    }
    return strengths;
  }

  private Optional<Strength> strength(Section section) {
    section.missing("name", "give it a short name, for example name = \"growing-on\"");
    section.missing("conductivity", "for example conductivity = \"1.50 mS/cm\"");
    Optional<PointName> name = NameReader.name(section);
    Optional<String> title = NameReader.title(section, name, LONGEST_TITLE);
    Optional<PointName> point = point(section);
    Optional<Double> conductivity = LimitsReader.positive(section, "conductivity", "1.50 mS/cm");
    Optional<StrengthOf> of =
        ProfileReader.or(
            section, "of", StrengthOf.TOTAL, section.choice("of", LimitsReader.strengthOf()));
    Optional<Double> tolerance =
        ProfileReader.or(
            section,
            "tolerance",
            Strength.USUAL_TOLERANCE,
            LimitsReader.positive(section, "tolerance", "0.15 mS/cm"));
    if (name.isEmpty()
        || title.isEmpty()
        || conductivity.isEmpty()
        || of.isEmpty()
        || tolerance.isEmpty()
        || section.has("point") != point.isPresent()) {
      return Optional.empty();
    }
    return section.made(
        section.has("tolerance") ? "tolerance" : "conductivity",
        () ->
            new Strength(
                name.get().text(),
                title.get(),
                point,
                conductivity.get(),
                of.get(),
                tolerance.get()));
  }

  List<AlarmRule> rules(Section root) {
    List<AlarmRule> rules = new ArrayList<>();
    for (Section section : root.tables("alarm", ALARM)) {
      section.missing("kind", "say which: " + Words.or(AlarmRule.KINDS));
      Map<String, String> kinds =
          AlarmRule.KINDS.stream()
              .collect(
                  Collectors.toMap(
                      Function.identity(), Function.identity(), (a, b) -> a, LinkedHashMap::new));
      Optional<String> kind = section.choice("kind", kinds);
      Optional<PointName> point = point(section);
      Optional<AlarmRule.Urgency> urgency = section.choice("priority", urgencies());
      Optional<Duration> on = section.duration("on-delay", Duration.ZERO, LONGEST_DELAY);
      Optional<Duration> off = section.duration("off-delay", Duration.ZERO, LONGEST_DELAY);
      kind.ifPresent(code -> rules.add(new AlarmRule(code, point, urgency, on, off)));
    }
    return rules;
  }

  private static Map<String, AlarmRule.Urgency> urgencies() {
    Map<String, AlarmRule.Urgency> words = new LinkedHashMap<>();
    for (AlarmRule.Urgency urgency : AlarmRule.Urgency.values()) {
      words.put(urgency.name().toLowerCase(Locale.ROOT), urgency);
    }
    return words;
  }

  private Optional<PointName> point(Section section) {
    Optional<PointName> point =
        section.parsed("point", PointName::new, "write the name of a point, such as line");
    point.ifPresent(name -> known(section, "point", name));
    return point;
  }

  private void known(Section section, String key, PointName name) {
    List<String> names = points.stream().map(placed -> placed.point().name().text()).toList();
    // a point that was left out for a fault of its own is told there
    if (!names.contains(name.text()) && section.source().problems().none()) {
      section.problem(
          key,
          "there is no point '%s'".formatted(name),
          Words.nearest(name.text(), names)
              .map("did you mean '%s'?"::formatted)
              .orElse("there are: " + String.join(", ", names)));
    }
  }
}
