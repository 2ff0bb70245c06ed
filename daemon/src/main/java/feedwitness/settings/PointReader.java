package feedwitness.settings;

import feedwitness.profile.DeviceProfile;
import feedwitness.profile.Protocol;
import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.PointName;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.PointLimits;
import feedwitness.site.ProbeMount;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Reads the {@code [[point]]} tables of one file. */
final class PointReader {
  private static final Set<String> OWN_KEYS =
      Set.of(
          "name",
          "title",
          "place",
          "port",
          "profile",
          "unit",
          "compensation",
          "percent-per-kelvin",
          "conductivity-unit",
          "instrument-compensates",
          "check-tolerance-percent",
          "check-interval");
  static final Set<String> KEYS =
      Stream.concat(OWN_KEYS.stream(), LimitsReader.KEYS.stream())
          .collect(Collectors.toUnmodifiableSet());
  private static final List<String> PROBE_KEYS =
      List.of("profile", "unit", "conductivity-unit", "instrument-compensates");
  private static final int LONGEST_TITLE = 80;

  private final ProfileShelf shelf;
  private final Set<PointName> names = new LinkedHashSet<>();

  PointReader(ProfileShelf shelf) {
    this.shelf = shelf;
  }

  /** Names met so far, those of faulty points too: a reference to one is no second fault. */
  Set<PointName> names() {
    return names;
  }

  List<PlacedPoint> read(Section root) {
    List<PlacedPoint> points = new ArrayList<>();
    for (Section section : root.tables("point", KEYS)) {
      point(section).ifPresent(point -> points.add(new PlacedPoint(point, section)));
    }
    return points;
  }

  private Optional<MeasuringPoint> point(Section section) {
    section.missing("name", "give the point a short name, for example name = \"tank\"");
    section.missing("place", "say what is measured there: " + Words.or(places().keySet()));
    Optional<PointName> name = NameReader.name(section);
    name.ifPresent(names::add);
    Optional<String> title = NameReader.title(section, name, LONGEST_TITLE);
    Optional<MeasuringPoint.Place> place = section.choice("place", places());
    Optional<CompensationChoice> compensation = CompensationReader.read(section);
    Optional<PointLimits> limits = LimitsReader.read(section);
    boolean typed = !section.has("port");
    Optional<ProbeMount> probe = typed ? Optional.empty() : probe(section);
    if (typed && section.source().whole()) {
      ProfileReader.refuse(
          section,
          PROBE_KEYS,
          "is for a point with a probe, but this one has no port",
          "give it a port, or leave the key out for a point whose readings are typed in");
    }
    if (name.isEmpty()
        || title.isEmpty()
        || place.isEmpty()
        || compensation.isEmpty()
        || limits.isEmpty()
        || (!typed && probe.isEmpty())) {
      return Optional.empty();
    }
    return section.made(
        "name",
        () ->
            new MeasuringPoint(
                name.get(), title.get(), place.get(), probe, compensation.get(), limits.get()));
  }

  static Map<String, MeasuringPoint.Place> places() {
    Map<String, MeasuringPoint.Place> places = new LinkedHashMap<>();
    for (MeasuringPoint.Place place : MeasuringPoint.Place.values()) {
      places.put(placeWord(place), place);
    }
    return places;
  }

  static String placeWord(MeasuringPoint.Place place) {
    return place.name().toLowerCase(Locale.ROOT);
  }

  private Optional<ProbeMount> probe(Section section) {
    section.missing("profile", "name the instrument's device profile: " + Words.or(shelf.names()));
    Optional<LinkAddress> link =
        section.parsed(
            "port",
            PointReader::link,
            "`feedwitness ports` lists the paths; an instrument on the network is tcp:HOST:PORT");
    Optional<DeviceProfile> profile = profile(section);
    Optional<Integer> unit = section.whole("unit", 1, 247);
    if (profile.isEmpty()) {
      return Optional.empty();
    }
    Optional<DeviceProfile> suited = ProfileOverride.apply(section, profile.get());
    boolean bus = profile.get().protocol() instanceof Protocol.Modbus;
    if (bus) {
      section.missing(
          "unit",
          "profile %s is Modbus: write the instrument's address on the bus, 1 to 247"
              .formatted(profile.get().name()));
    } else if (section.has("unit")) {
      section.problem(
          "unit",
          "'unit' is for Modbus, but profile %s sends lines".formatted(profile.get().name()),
          "leave it out (the unit of conductivity is conductivity-unit)");
      return Optional.empty();
    }
    if (link.isEmpty() || suited.isEmpty() || (bus && unit.isEmpty())) {
      return Optional.empty();
    }
    return section.made(
        "port", () -> new ProbeMount(link.get(), suited.get(), bus ? unit.get() : 0));
  }

  private Optional<DeviceProfile> profile(Section section) {
    Optional<String> name = section.text("profile");
    Optional<DeviceProfile> profile = name.flatMap(shelf::find);
    if (name.isPresent() && profile.isEmpty() && !brokenOnes().contains(name.get())) {
      section.problem(
          "profile",
          "there is no device profile '%s'".formatted(Values.clip(name.get())),
          Words.nearest(name.get(), shelf.names())
              .map(near -> "did you mean '%s'? ".formatted(near))
              .orElse("")
              .concat("Known: " + String.join(", ", shelf.names())));
    }
    return profile;
  }

  /** Profiles that are there but faulty: their own problems are told already. */
  private List<String> brokenOnes() {
    return shelf.problems().stream()
        .map(problem -> ProfileReader.nameOf(problem.file()))
        .distinct()
        .toList();
  }

  private static LinkAddress link(String text) {
    LinkAddress link = LinkAddress.parse(text);
    if (text.chars().anyMatch(Character::isISOControl)) {
      throw new IllegalArgumentException("'%s' has a character no path has".formatted(text));
    }
    return link;
  }
}
