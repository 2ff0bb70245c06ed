package feedwitness.sample;

import feedwitness.profile.DeviceProfile;
import feedwitness.profile.Fields;
import feedwitness.profile.Fields.OctetOrder;
import feedwitness.profile.Fields.Place;
import feedwitness.profile.InstrumentFacts;
import feedwitness.profile.InstrumentFacts.Compensation;
import feedwitness.profile.Protocol;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.Octets;
import feedwitness.quantity.SerialSettings;
import feedwitness.quantity.TemperatureUnit;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** The six families of device-profiles/, as values: no reader of TOML is needed here. */
public final class FamilyProfiles {
  private static final SerialSettings SERIAL =
      new SerialSettings(9600, 8, SerialSettings.Parity.NONE, 1);

  private FamilyProfiles() {}

  /** All of them. */
  public static List<DeviceProfile> all() {
    return List.of(
        pushedCsv(), queryReply(), modbusContact(), modbusFloat(), modbusScaled(), tcpText());
  }

  static DeviceProfile pushedCsv() {
    return profile(
        "pushed-csv",
        line(
            "",
            "\\s*(?<conductivity>\\d+(?:\\.\\d+)?)\\s*,\\s*(?<temperature>-?\\d+(?:\\.\\d+)?)\\s*",
            "(?:EC|[Cc]onductivity)\\b[^0-9]*"),
        groups(ConductivityUnit.MICROSIEMENS_PER_CM, Optional.empty()),
        facts(Compensation.NONE, 20, 50, 0.0001, 2, 0.5),
        1000);
  }

  static DeviceProfile queryReply() {
    return profile(
        "query-reply",
        line(
            "R\r",
            "\\s*(?<conductivity>\\d+(?:\\.\\d+)?) +(?<unit>\\S+)"
                + " +(?<temperature>-?\\d+(?:\\.\\d+)?) *°?C\\s*",
            ""),
        groups(ConductivityUnit.MILLISIEMENS_PER_CM, Optional.of("unit")),
        facts(Compensation.NONE, 20, 60, 0.001, 1.5, 0.3),
        600);
  }

  static DeviceProfile modbusFloat() {
    return profile(
        "modbus-float",
        new Protocol.Modbus(List.of(new Protocol.Read(3, 0, 4))),
        new Fields(
            new Place.Registers(3, 0, Fields.Type.FLOAT32, OctetOrder.ABCD, 1, 0),
            ConductivityUnit.MILLISIEMENS_PER_CM,
            Optional.of(new Place.Registers(3, 2, Fields.Type.FLOAT32, OctetOrder.ABCD, 1, 0)),
            TemperatureUnit.CELSIUS),
        facts(Compensation.NONE, 20, 60, Double.NaN, 1, 0.3),
        300);
  }

  static DeviceProfile modbusScaled() {
    return profile(
        "modbus-scaled",
        new Protocol.Modbus(List.of(new Protocol.Read(4, 0, 2))),
        new Fields(
            new Place.Registers(4, 0, Fields.Type.UINT16, OctetOrder.ABCD, 1, 0),
            ConductivityUnit.MICROSIEMENS_PER_CM,
            Optional.of(new Place.Registers(4, 1, Fields.Type.INT16, OctetOrder.ABCD, 0.1, 0)),
            TemperatureUnit.CELSIUS),
        facts(Compensation.NONE, 20, 50, 0.001, 2, 0.5),
        300);
  }

  static DeviceProfile modbusContact() {
    return profile(
        "modbus-contact",
        new Protocol.Modbus(List.of(new Protocol.Read(4, 0, 3))),
        new Fields(
            new Place.Registers(4, 0, Fields.Type.UINT16, OctetOrder.ABCD, 1, 0),
            ConductivityUnit.MICROSIEMENS_PER_CM,
            Optional.of(new Place.Registers(4, 1, Fields.Type.INT16, OctetOrder.ABCD, 0.1, 0)),
            TemperatureUnit.CELSIUS,
            Optional.of(
                new Fields.ContactPlace(
                    new Place.Registers(4, 2, Fields.Type.UINT16, OctetOrder.ABCD, 1, 0), false))),
        facts(Compensation.NONE, 20, 50, 0.001, 2, 0.5),
        300);
  }

  static DeviceProfile tcpText() {
    return profile(
        "tcp-text",
        line("", "EC=(?<conductivity>\\d+(?:\\.\\d+)?);T=(?<temperature>-?\\d+(?:\\.\\d+)?)", ""),
        groups(ConductivityUnit.MILLISIEMENS_PER_CM, Optional.empty()),
        facts(Compensation.TO_25, 10, 50, 0.001, 2, 0.5),
        1000);
  }

  /** A profile around a protocol and fields; everything else is of no matter to a decoder. */
  static DeviceProfile around(Protocol protocol, Fields fields) {
    return profile("trial", protocol, fields, facts(Compensation.NONE, 20, 50, 0.001, 2, 0.5), 300);
  }

  /** A line protocol with a longest line of 64; empty texts for no query and nothing to ignore. */
  static Protocol.Line line(String query, String pattern, String ignore) {
    return new Protocol.Line(
        query.isEmpty() ? Optional.empty() : Optional.of(Octets.ofText(query)),
        Pattern.compile(pattern),
        ignore.isEmpty() ? Optional.empty() : Optional.of(Pattern.compile(ignore)),
        64);
  }

  /** Groups {@code conductivity} and {@code temperature} in °C. */
  static Fields groups(ConductivityUnit unit, Optional<String> unitGroup) {
    return new Fields(
        new Place.Group("conductivity", unitGroup),
        unit,
        Optional.of(new Place.Group("temperature")),
        TemperatureUnit.CELSIUS);
  }

  private static InstrumentFacts facts(
      Compensation compensation,
      double maxMilliSiemensPerCm,
      double maxCelsius,
      double resolution,
      double accuracyPercent,
      double temperatureAccuracyKelvin) {
    return new InstrumentFacts(
        compensation,
        0,
        maxMilliSiemensPerCm,
        0,
        maxCelsius,
        resolution,
        accuracyPercent,
        temperatureAccuracyKelvin);
  }

  private static DeviceProfile profile(
      String name, Protocol protocol, Fields fields, InstrumentFacts facts, int replyMillis) {
    return new DeviceProfile(
        name,
        "family " + name,
        SERIAL,
        protocol,
        fields,
        facts,
        Duration.ofSeconds(name.equals("query-reply") ? 5 : 2),
        Duration.ofMillis(replyMillis));
  }
}
