package feedwitness.settings;

import feedwitness.profile.Fields;
import feedwitness.profile.Protocol;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.TemperatureUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The {@code [conductivity]} and {@code [temperature]} tables of a profile. */
final class FieldsReader {
  private static final List<String> REGISTER_KEYS =
      List.of("function", "register", "type", "order", "scale", "offset");
  private static final List<String> GROUP_KEYS = List.of("group", "unit-group");
  private static final Set<String> KEYS =
      Set.of(
          "unit",
          "group",
          "unit-group",
          "function",
          "register",
          "type",
          "order",
          "scale",
          "offset");

  private static final Set<String> CONTACT =
      Set.of("group", "function", "register", "type", "order", "closed-is");

  private FieldsReader() {}

  static Optional<Fields> read(Section root, Optional<Protocol> protocol) {
    root.missing("conductivity", "say where conductivity stands, in a table [conductivity]");
    Optional<Section> conductivity = root.table("conductivity", KEYS);
    Optional<Section> temperature = root.table("temperature", KEYS);
    Optional<ConductivityUnit> conductivityUnit =
        conductivity.flatMap(FieldsReader::conductivityUnit);
    Optional<TemperatureUnit> temperatureUnit = temperature.flatMap(FieldsReader::temperatureUnit);
    if (protocol.isEmpty()) {
      return Optional.empty();
    }
    Optional<Fields.Place> place =
        conductivity.flatMap(s -> place(s, "conductivity", protocol.get()));
    Optional<Fields.Place> second =
        temperature.flatMap(s -> place(s, "temperature", protocol.get()));
    Optional<Fields.ContactPlace> contact = contact(root, protocol.get());
    if (root.has("contact") && contact.isEmpty()) {
      return Optional.empty();
    }
    boolean whole = !root.has("temperature") || (second.isPresent() && temperatureUnit.isPresent());
    if (!whole || place.isEmpty() || conductivityUnit.isEmpty()) {
      return Optional.empty();
    }
    return root.made(
        root.has("contact") ? "contact" : root.has("temperature") ? "temperature" : "conductivity",
        () ->
            new Fields(
                place.get(),
                conductivityUnit.get(),
                second,
                temperatureUnit.orElse(TemperatureUnit.CELSIUS),
                contact));
  }

  private static Optional<Fields.ContactPlace> contact(Section root, Protocol protocol) {
    return root.table("contact", CONTACT)
        .flatMap(
            section ->
                ProfileReader.or(
                        section,
                        "closed-is",
                        false,
                        section.choice("closed-is", Map.of("not zero", false, "zero", true)))
                    .flatMap(
                        zero ->
                            place(section, "contact", protocol)
                                .map(place -> new Fields.ContactPlace(place, zero))));
  }

  private static Optional<ConductivityUnit> conductivityUnit(Section section) {
    section.missing("unit", "write the unit the instrument sends: " + Words.conductivityUnits());
    return Units.conductivity(section, "unit");
  }

  private static Optional<TemperatureUnit> temperatureUnit(Section section) {
    section.missing("unit", "write \"°C\" or \"°F\"");
    return section.parsed(
        "unit",
        text ->
            TemperatureUnit.parse(text)
                .orElseThrow(
                    () ->
                        new IllegalArgumentException(
                            "'%s' is no unit of temperature".formatted(text))),
        "write \"°C\" or \"°F\"");
  }

  private static Optional<Fields.Place> place(Section section, String group, Protocol protocol) {
    if (protocol instanceof Protocol.Line line) {
      ProfileReader.refuse(
          section, REGISTER_KEYS, "is for Modbus, but the profile has [line]", "leave it out");
      return group(section, group, line);
    }
    ProfileReader.refuse(
        section, GROUP_KEYS, "is for lines, but the profile has [modbus]", "leave it out");
    return protocol instanceof Protocol.Modbus modbus
        ? registers(section, modbus)
        : Optional.empty();
  }

  private static Optional<Fields.Place> group(
      Section section, String standard, Protocol.Line line) {
    Optional<String> name =
        ProfileReader.or(section, "group", standard, section.text("group"))
            .filter(group -> named(section, "group", group, line, "number"));
    Optional<String> unit =
        section
            .text("unit-group")
            .filter(group -> named(section, "unit-group", group, line, "unit"));
    return name.isEmpty() || section.has("unit-group") != unit.isPresent()
        ? Optional.empty()
        : section.made("group", () -> new Fields.Place.Group(name.get(), unit));
  }

  private static boolean named(
      Section section, String key, String group, Protocol.Line line, String what) {
    boolean there = hasGroup(line, group);
    if (!there) {
      section.problem(
          key,
          "pattern has no group named '%s'".formatted(Values.clip(group)),
          "write (?<%s>…) in the pattern around the %s".formatted(Values.clip(group), what));
    }
    return there;
  }

  private static boolean hasGroup(Protocol.Line line, String name) {
    try {
      // Groups can be asked for only after a match: a twin that matches the empty text first.
      Pattern twin = Pattern.compile("|" + line.pattern().pattern(), line.pattern().flags());
      Matcher matcher = twin.matcher("");
      return matcher.find() && matcher.start(name) <= 0;
    } catch (IllegalArgumentException noSuchGroup) {
      return false;
    }
  }

  private static Optional<Fields.Place> registers(Section section, Protocol.Modbus modbus) {
    section.missing("function", "write 3 for holding registers or 4 for input registers");
    section.missing("register", "write the first register of the number, counted from 0");
    section.missing("type", "write int16, uint16, int32, uint32 or float32");
    Map<String, Fields.Type> types = new LinkedHashMap<>();
    for (Fields.Type type : Fields.Type.values()) {
      types.put(type.name().toLowerCase(Locale.ROOT), type);
    }
    Optional<Integer> function = section.whole("function", 3, 4);
    Optional<Integer> register = section.whole("register", 0, 65_535);
    Optional<Fields.Type> type = section.choice("type", types);
    Optional<Fields.OctetOrder> order = order(section, type);
    Optional<Double> scale = ProfileReader.or(section, "scale", 1.0, scale(section));
    Optional<Double> offset =
        ProfileReader.or(section, "offset", 0.0, section.number("offset", -1e6, 1e6, ""));
    if (function.isEmpty()
        || register.isEmpty()
        || type.isEmpty()
        || order.isEmpty()
        || scale.isEmpty()
        || offset.isEmpty()) {
      return Optional.empty();
    }
    return section
        .made(
            "register",
            () ->
                new Fields.Place.Registers(
                    function.get(),
                    register.get(),
                    type.get(),
                    order.get(),
                    scale.get(),
                    offset.get()))
        .filter(place -> covered(section, place, modbus))
        .map(place -> place);
  }

  private static Optional<Double> scale(Section section) {
    Optional<Double> scale = section.number("scale", -1e6, 1e6, "");
    if (scale.isPresent() && scale.get() == 0) {
      section.problem("scale", "scale 0 makes every reading the same", "write the manual's factor");
      return Optional.empty();
    }
    return scale;
  }

  private static Optional<Fields.OctetOrder> order(Section section, Optional<Fields.Type> type) {
    Map<String, Fields.OctetOrder> orders = new LinkedHashMap<>();
    for (Fields.OctetOrder order : Fields.OctetOrder.values()) {
      if (type.isEmpty()
          || type.get().registers() == 2
          || order == Fields.OctetOrder.ABCD
          || order == Fields.OctetOrder.BADC) {
        orders.put(order.name(), order);
      }
    }
    return ProfileReader.or(
        section, "order", Fields.OctetOrder.ABCD, section.choice("order", orders));
  }

  private static boolean covered(
      Section section, Fields.Place.Registers place, Protocol.Modbus modbus) {
    int last = place.register() + place.type().registers() - 1;
    for (Protocol.Read read : modbus.reads()) {
      if (read.function() == place.function()
          && read.start() <= place.register()
          && last < read.start() + read.count()) {
        return true;
      }
    }
    section.problem(
        "register",
        "registers %d to %d, function %d, are in no read"
            .formatted(place.register(), last, place.function()),
        "widen a read in [modbus] so that one of them covers the whole number");
    return false;
  }
}
