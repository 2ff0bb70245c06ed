package feedwitness.settings;

import feedwitness.feed.FeedStock;
import feedwitness.quantity.PointName;
import feedwitness.site.DriftLimits;
import feedwitness.site.FeedLine;
import feedwitness.site.Mixer;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Reads the {@code [[feed-line]]} tables, once the points of all files are known. */
final class FeedLineReader {
  static final String TABLE = "feed-line";
  static final Set<String> KEYS =
      Set.of(
          "name",
          "title",
          "source",
          "tank",
          "line",
          "drain",
          "second",
          "contact",
          "ratio",
          "dial",
          FeedStockReader.RECIPE,
          FeedStockReader.READS,
          FeedStockReader.DILUTION,
          "strengths",
          FeedStockReader.WATER,
          "notice-percent",
          "alarm-percent",
          "false-alarms");
  static final double MOST_RATIO = 10_000;
  static final double MOST_DIAL = 100;
  private static final int LONGEST_TITLE = 80;
  private static final String SOURCE_IS =
      "source is the point before feed is added, line the one after; leave source out if there is"
          + " none";
  private static final String SECOND_IS =
      "second is another probe in the same liquid; leave it out if there is none";

  private final Map<String, PointName> points;

  FeedLineReader(Collection<PointName> points) {
    this.points =
        points.stream()
            .collect(Collectors.toMap(PointName::text, p -> p, (a, b) -> a, LinkedHashMap::new));
  }

  /** Feed lines without a fault; the others' faults are noted. */
  List<FeedLine> read(Section root) {
    List<FeedLine> lines = new ArrayList<>();
    for (Section section : root.tables(TABLE, KEYS)) {
      Optional<FeedLine> line = line(section);
      if (line.isPresent() && lines.stream().anyMatch(l -> l.name().equals(line.get().name()))) {
        section.problem(
            "name", "another feed line has this name", "give each feed line a name of its own");
      } else {
        line.ifPresent(lines::add);
      }
    }
    return lines;
  }

  private Optional<FeedLine> line(Section section) {
    section.missing("name", "give the feed line a short name, for example name = \"glasshouse\"");
    section.missing("line", "name the point that measures the feed, for example line = \"line\"");
    Optional<PointName> name = NameReader.name(section);
    Optional<String> title = NameReader.title(section, name, LONGEST_TITLE);
    Optional<PointName> line = point(section, "line");
    Optional<PointName> source = point(section, "source");
    Optional<PointName> tank = point(section, "tank");
    Optional<PointName> drain = point(section, "drain");
    Optional<PointName> second = point(section, "second");
    Optional<PointName> contact = point(section, "contact");
    Optional<Mixer> mixer = mixer(section);
    Optional<DriftLimits> limits = limits(section);
    Optional<List<Double>> strengths = strengths(section);
    Optional<Double> sourceStrength = strength(section, FeedStockReader.WATER);
    Optional<FeedStockReader.Found> stock = FeedStockReader.read(section, mixer, sourceStrength);
    boolean faulty =
        lost(section, "source", source)
            || lost(section, "tank", tank)
            || lost(section, "drain", drain)
            || lost(section, "second", second)
            || lost(section, "contact", contact)
            || lost(section, FeedStockReader.WATER, sourceStrength)
            || twice(section, "source", source, line, SOURCE_IS)
            || twice(section, "second", second, line, SECOND_IS);
    if (faulty
        || name.isEmpty()
        || title.isEmpty()
        || line.isEmpty()
        || mixer.isEmpty()
        || limits.isEmpty()
        || strengths.isEmpty()
        || stock.isEmpty()) {
      return Optional.empty();
    }
    double water =
        sourceStrength
            .or(() -> stock.get().stock().map(FeedStock::water))
            .filter(strength -> strength > 0)
            .orElse(Double.NaN);
    return section.made(
        "strengths",
        () ->
            new FeedLine(
                name.get(),
                title.get(),
                source,
                tank,
                line.get(),
                drain,
                second,
                contact,
                mixer.get(),
                strengths.get(),
                List.of(),
                water,
                limits.get(),
                stock.get().stock()));
  }

  private static boolean lost(Section section, String key, Optional<?> value) {
    return section.has(key) && value.isEmpty();
  }

  private static boolean twice(
      Section section, String key, Optional<PointName> one, Optional<PointName> line, String is) {
    boolean same = one.isPresent() && one.equals(line);
    if (same) {
      section.problem(key, "%s and line are both point '%s'".formatted(key, one.get()), is);
    }
    return same;
  }

  private Optional<PointName> point(Section section, String key) {
    return section
        .text(key)
        .flatMap(
            text -> {
              PointName point = points.get(text);
              if (point == null) {
                section.problem(
                    key,
                    "%s: there is no measuring point '%s'".formatted(key, Values.clip(text)),
                    Words.nearest(text, points.keySet())
                        .map("did you mean '%s'?"::formatted)
                        .orElse(
                            points.isEmpty()
                                ? "add a [[point]] with that name"
                                : "points are " + Words.or(points.keySet())));
              }
              return Optional.ofNullable(point);
            });
  }

  private static Optional<Mixer> mixer(Section section) {
    if (section.has("ratio") && section.has("dial")) {
      section.problem(
          "dial",
          "'ratio' and 'dial' are both given",
          "write ratio for an injector, dial for a siphon mixer");
      return Optional.empty();
    }
    if (section.has("dial")) {
      return section
          .number("dial", 0, MOST_DIAL, "")
          .flatMap(dial -> section.made("dial", () -> new Mixer.Siphon(dial)));
    }
    if (section.has("ratio")) {
      return section
          .number("ratio", 0, MOST_RATIO, "")
          .flatMap(ratio -> section.made("ratio", () -> new Mixer.Injector(ratio)));
    }
    return Optional.of(new Mixer.None());
  }

  private static Optional<DriftLimits> limits(Section section) {
    DriftLimits usual = DriftLimits.USUAL;
    Optional<Double> notice =
        section.number(
            "notice-percent", DriftLimits.LEAST_PERCENT, DriftLimits.MOST_NOTICE_PERCENT, "%");
    Optional<Double> alarm =
        section.number(
            "alarm-percent", DriftLimits.LEAST_PERCENT, DriftLimits.MOST_ALARM_PERCENT, "%");
    Optional<DriftLimits.FalseAlarms> words = section.choice("false-alarms", falseAlarms());
    if (lost(section, "notice-percent", notice)
        || lost(section, "alarm-percent", alarm)
        || lost(section, "false-alarms", words)) {
      return Optional.empty();
    }
    return section.made(
        section.has("alarm-percent") ? "alarm-percent" : "notice-percent",
        () ->
            new DriftLimits(
                notice.orElse(usual.noticePercent()),
                alarm.orElse(usual.alarmPercent()),
                words.orElse(usual.falseAlarms())));
  }

  static Map<String, DriftLimits.FalseAlarms> falseAlarms() {
    Map<String, DriftLimits.FalseAlarms> words = new LinkedHashMap<>();
    for (DriftLimits.FalseAlarms one : DriftLimits.FalseAlarms.values()) {
      words.put(one.words(), one);
    }
    return words;
  }

  private static Optional<List<Double>> strengths(Section section) {
    if (!section.has("strengths")) {
      return Optional.of(List.of());
    }
    Optional<List<String>> texts = section.texts("strengths");
    if (texts.isEmpty()) {
      return Optional.empty();
    }
    List<Double> strengths = new ArrayList<>();
    for (String text : texts.get()) {
      Optional<Double> one =
          section.entry("strengths", text, ConductivityText::parseMilliSiemensPerCm);
      if (one.isEmpty()) {
        return Optional.empty();
      }
      strengths.add(one.get());
    }
    return Optional.of(strengths);
  }

  private static Optional<Double> strength(Section section, String key) {
    return section.parsed(
        key,
        ConductivityText::parseMilliSiemensPerCm,
        "write number and unit, for example \"0.46 mS/cm\"");
  }
}
