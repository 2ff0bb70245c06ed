package feedwitness.settings;

import feedwitness.quantity.ListenAddress;
import feedwitness.site.AlarmRule;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.MessagePlan;
import feedwitness.site.Site;
import feedwitness.site.Strength;
import java.nio.file.Files;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Reads a configuration: the user's own file if there is one, what the page has written if there is
 * any, and the device profiles. Every fault in all of them is told at once. Whether a port exists
 * is no question here: it may be plugged in later.
 */
public final class ConfigReader {
  private static final Set<String> KEYS =
      Set.of(
          "nursery",
          "server",
          "web",
          "store",
          "clock",
          "point",
          "strength",
          "alarm",
          "messages",
          "mail",
          "webhook",
          "check",
          "standard");
  static final Set<String> GENERATED_KEYS = Set.of("point");
  static final Set<String> NURSERY = Set.of("name", "zone");
  static final Set<String> SERVER = Set.of("listen");
  private static final String DEFAULT_NAME = "Nursery";
  private static final int LONGEST_NAME = 80;

  private ConfigReader() {}

  /** Reads it all. */
  public static ConfigOutcome read(ConfigFiles files) {
    return read(files, Optional.empty());
  }

  /**
   * What reading would give if the generated file had the given text.
   *
   * @param generated in place of what stands in the file
   */
  static ConfigOutcome read(ConfigFiles files, Optional<String> generated) {
    Problems problems = new Problems();
    List<String> notes = new ArrayList<>();
    ProfileShelf shelf = ProfileShelf.read(files.profiles());
    notes.addAll(shelf.notes());
    PointReader reader = new PointReader(shelf);
    List<PlacedPoint> points = new ArrayList<>();
    Optional<Section> own = files.own().flatMap(file -> TomlFile.read(file, KEYS, problems));
    own.ifPresent(root -> points.addAll(reader.read(root)));
    generated(files, generated, problems).ifPresent(root -> points.addAll(reader.read(root)));
    SharedPorts.check(points);
    AlarmsReader alarms = new AlarmsReader(points);
    alarms.checkSources();
    List<Strength> strengths = own.map(alarms::strengths).orElse(List.of());
    List<AlarmRule> rules = own.map(alarms::rules).orElse(List.of());
    CheckRules checks = CheckReader.read(own, points);
    Optional<General> general =
        files.own().isPresent()
            ? own.flatMap(root -> general(root, files, notes))
            : Optional.of(defaults(files));
    shelf.problems().forEach(problems::add);
    if (!problems.none() || general.isEmpty()) {
      return new ConfigOutcome.Faulty(problems.list());
    }
    return new ConfigOutcome.Read(
        general.get().with(points, strengths, rules, shelf, checks), notes);
  }

  private static Optional<Section> generated(
      ConfigFiles files, Optional<String> text, Problems problems) {
    if (text.isPresent()) {
      return TomlFile.parse(files.generated(), text.get(), GENERATED_KEYS, problems);
    }
    return Files.exists(files.generated())
        ? TomlFile.read(files.generated(), GENERATED_KEYS, problems)
        : Optional.empty();
  }

  /** All but the points. */
  private record General(
      String name,
      ZoneId zone,
      ListenAddress listen,
      WebSettings web,
      StoreReader.Storing storing,
      MessagePlan messages) {
    Config with(
        List<PlacedPoint> placed,
        List<Strength> strengths,
        List<AlarmRule> rules,
        ProfileShelf shelf,
        CheckRules checks) {
      List<MeasuringPoint> points = placed.stream().map(PlacedPoint::point).toList();
      return new Config(
          new Site(name, zone, points, strengths, rules),
          listen,
          web,
          storing.directory(),
          storing.syncEvery(),
          storing.freeFloor(),
          storing.keepRaw(),
          storing.clock(),
          messages,
          checks,
          shelf.all());
    }
  }

  private static General defaults(ConfigFiles files) {
    return new General(
        DEFAULT_NAME,
        files.zone(),
        ListenAddress.DEFAULT,
        WebSettings.NONE,
        StoreReader.defaults(files),
        MessagePlan.NONE);
  }

  private static Optional<General> general(Section root, ConfigFiles files, List<String> notes) {
    root.missing("nursery", "begin with a table [nursery] with name and zone");
    Optional<Section> nursery = root.table("nursery", NURSERY);
    nursery.ifPresent(n -> n.missing("name", "for example name = \"Quarry End Nursery\""));
    nursery.ifPresent(n -> n.missing("zone", "for example zone = \"Europe/London\""));
    Optional<String> name = nursery.flatMap(n -> line(n, "name", LONGEST_NAME));
    Optional<ZoneId> zone = nursery.flatMap(ConfigReader::zone);
    Optional<ListenAddress> listen =
        root.table("server", SERVER)
            .flatMap(
                s ->
                    s.parsed(
                        "listen", ListenAddress::parse, "for example listen = \"127.0.0.1:8460\""))
            .or(() -> Optional.of(ListenAddress.DEFAULT));
    WebSettings web = WebReader.read(root, listen.orElse(ListenAddress.DEFAULT));
    listen
        .filter(address -> !address.isLoopback() && web.certificate().isEmpty())
        .ifPresent(address -> notes.add(openNote(address)));
    StoreReader.Storing storing = StoreReader.read(root, files);
    MessagePlan messages = MessagesReader.read(root, notes);
    if (name.isEmpty() || zone.isEmpty() || listen.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new General(name.get(), zone.get(), listen.get(), web, storing, messages));
  }

  private static String openNote(ListenAddress address) {
    return ("server.listen %s can be reached from other machines without TLS: whoever listens in on that"
            + " network can read along and take over a paired phone; see docs/access.md")
        .formatted(address.text());
  }

  /** One line of text of bounded length. */
  static Optional<String> line(Section section, String key, int longest) {
    return section.parsed(
        key,
        text -> {
          if (text.length() > longest) {
            throw new IllegalArgumentException(
                "has %d characters, at most %d fit".formatted(text.length(), longest));
          }
          if (text.chars().anyMatch(Character::isISOControl)) {
            throw new IllegalArgumentException(
                "'%s' is not one line; write it as one".formatted(text));
          }
          return text;
        },
        "shorten it");
  }

  private static Optional<ZoneId> zone(Section nursery) {
    return nursery
        .text("zone")
        .flatMap(
            text -> {
              try {
                return Optional.of(ZoneId.of(text));
              } catch (DateTimeException e) {
                nursery.problem(
                    "zone",
                    "zone '%s' is no time zone".formatted(Values.clip(text)),
                    zoneRemedy(text));
                return Optional.empty();
              }
            });
  }

  private static String zoneRemedy(String text) {
    Set<String> zones = ZoneId.getAvailableZoneIds();
    String city = "/" + text.strip().replace(' ', '_');
    return zones.stream()
        .filter(
            zone -> zone.regionMatches(true, zone.length() - city.length(), city, 0, city.length()))
        .sorted()
        .findFirst()
        .or(() -> Words.nearest(text, zones.stream().sorted().toList()))
        .map("did you mean '%s'?"::formatted)
        .orElse("write it as continent and city, for example \"Europe/London\"");
  }
}
