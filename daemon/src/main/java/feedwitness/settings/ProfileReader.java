package feedwitness.settings;

import feedwitness.profile.DeviceProfile;
import feedwitness.profile.Fields;
import feedwitness.profile.InstrumentFacts;
import feedwitness.profile.Protocol;
import feedwitness.quantity.SerialSettings;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads one device profile; its keys are explained in device-profiles/README.md. */
final class ProfileReader {
  private static final Duration SHORTEST = Duration.ofMillis(1);
  private static final Duration LONGEST_INTERVAL = Duration.ofDays(1);
  private static final Duration LONGEST_REPLY = Duration.ofMinutes(1);
  private static final Duration DEFAULT_REPLY = Duration.ofSeconds(1);

  private static final Set<String> KEYS =
      Set.of(
          "title",
          "interval",
          "longest-reply",
          "serial",
          "line",
          "modbus",
          "conductivity",
          "temperature",
          "contact",
          "instrument");
  private static final Set<String> SERIAL = Set.of("baud", "data-bits", "parity", "stop-bits");

  private ProfileReader() {}

  /** A profile file; its name without {@code .toml} is the profile's. */
  static Optional<DeviceProfile> read(Path file, Problems problems) {
    return TomlFile.read(file, KEYS, problems).flatMap(root -> profile(nameOf(file), root));
  }

  /** A profile's text, as if it stood in {@code file}. */
  static Optional<DeviceProfile> parse(Path file, String text, Problems problems) {
    return TomlFile.parse(file, text, KEYS, problems).flatMap(root -> profile(nameOf(file), root));
  }

  static String nameOf(Path file) {
    return String.valueOf(file.getFileName()).replaceFirst("\\.toml$", "");
  }

  private static Optional<DeviceProfile> profile(String name, Section root) {
    boolean named = name.matches("[A-Za-z0-9][A-Za-z0-9._-]{0,63}");
    if (!named) {
      root.problem(
          "title",
          "the file's name makes the profile name '%s'".formatted(Values.clip(name)),
          "rename the file: 1 to 64 letters, digits, dots, dashes and underscores, then .toml");
    }
    root.missing("title", "say in one line what the instrument sends");
    root.missing("interval", "say how often a reading comes, for example interval = \"2s\"");
    Optional<String> title = root.text("title");
    Optional<Duration> interval = root.duration("interval", SHORTEST, LONGEST_INTERVAL);
    Optional<Duration> reply =
        root.has("longest-reply")
            ? root.duration("longest-reply", SHORTEST, LONGEST_REPLY)
            : Optional.of(DEFAULT_REPLY);
    Optional<SerialSettings> serial = serial(root);
    Optional<Protocol> protocol = ProtocolReader.read(root);
    Optional<Fields> fields = FieldsReader.read(root, protocol);
    Optional<InstrumentFacts> facts = InstrumentReader.read(root);
    if (!named
        || title.isEmpty()
        || interval.isEmpty()
        || reply.isEmpty()
        || serial.isEmpty()
        || protocol.isEmpty()
        || fields.isEmpty()
        || facts.isEmpty()) {
      return Optional.empty();
    }
    return root.made(
        "title",
        () ->
            new DeviceProfile(
                name,
                title.get(),
                serial.get(),
                protocol.get(),
                fields.get(),
                facts.get(),
                interval.get(),
                reply.get()));
  }

  private static Optional<SerialSettings> serial(Section root) {
    if (!root.has("serial")) {
      return Optional.of(new SerialSettings(9600, 8, SerialSettings.Parity.NONE, 1));
    }
    Optional<Section> section = root.table("serial", SERIAL);
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Section serial = section.get();
    Map<String, SerialSettings.Parity> parities = new LinkedHashMap<>();
    parities.put("none", SerialSettings.Parity.NONE);
    parities.put("even", SerialSettings.Parity.EVEN);
    parities.put("odd", SerialSettings.Parity.ODD);
    Optional<Integer> baud = or(serial, "baud", 9600, serial.whole("baud", 300, 1_000_000));
    Optional<Integer> data = or(serial, "data-bits", 8, serial.whole("data-bits", 7, 8));
    Optional<Integer> stop = or(serial, "stop-bits", 1, serial.whole("stop-bits", 1, 2));
    Optional<SerialSettings.Parity> parity =
        or(serial, "parity", SerialSettings.Parity.NONE, serial.choice("parity", parities));
    if (baud.isEmpty() || data.isEmpty() || stop.isEmpty() || parity.isEmpty()) {
      return Optional.empty();
    }
    return serial.made(
        "baud", () -> new SerialSettings(baud.get(), data.get(), parity.get(), stop.get()));
  }

  /** The default if the key is not there; a key that is there and wrong stays empty. */
  static <T> Optional<T> or(Section section, String key, T absent, Optional<T> read) {
    return section.has(key) ? read : Optional.of(absent);
  }

  /** Which of the protocols a list of keys belongs to, for messages. */
  static void refuse(Section section, List<String> keys, String why, String remedy) {
    for (String key : keys) {
      if (section.has(key)) {
        section.problem(key, "'%s' %s".formatted(key, why), remedy);
      }
    }
  }
}
