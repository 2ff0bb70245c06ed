package feedwitness.profile;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.profile.Fields.OctetOrder;
import feedwitness.profile.Fields.Place;
import feedwitness.profile.InstrumentFacts.Compensation;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.Octets;
import feedwitness.quantity.SerialSettings;
import feedwitness.quantity.TemperatureUnit;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a profile may say, and what it is told when it says something else. */
class DeviceProfileTest {
  private static final Place FLOAT_AT_0 = registers(0, Fields.Type.FLOAT32);
  private static final Place INT_AT_2 = registers(2, Fields.Type.INT16);

  private static Place registers(int register, Fields.Type type) {
    return new Place.Registers(3, register, type, OctetOrder.ABCD, 1, 0);
  }

  private static Protocol.Line line(String pattern) {
    return new Protocol.Line(Optional.empty(), Pattern.compile(pattern), Optional.empty(), 64);
  }

  private static Protocol.Modbus modbus(int start, int count) {
    return new Protocol.Modbus(List.of(new Protocol.Read(3, start, count)));
  }

  private static Fields fields(Place conductivity, Place temperature) {
    return new Fields(
        conductivity,
        ConductivityUnit.MILLISIEMENS_PER_CM,
        Optional.of(temperature),
        TemperatureUnit.CELSIUS);
  }

  private static InstrumentFacts facts(
      double min, double max, double minT, double maxT, double resolution, double accuracy) {
    return new InstrumentFacts(
        Compensation.NONE, min, max, minT, maxT, resolution, accuracy, Double.NaN);
  }

  private static DeviceProfile profile(String name, Protocol protocol, Fields fields) {
    return timed(name, protocol, fields, 2000, 300);
  }

  private static DeviceProfile timed(
      String name, Protocol protocol, Fields fields, long intervalMillis, long replyMillis) {
    return new DeviceProfile(
        name,
        "A tank probe",
        new SerialSettings(9600, 8, SerialSettings.Parity.NONE, 1),
        protocol,
        fields,
        facts(0, 20, 0, 50, Double.NaN, Double.NaN),
        Duration.ofMillis(intervalMillis),
        Duration.ofMillis(replyMillis));
  }

  private static void refused(String message, Executable making) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, making).getMessage());
  }

  @Test
  void aProfileWithinItsLimitsIsTaken() {
    assertDoesNotThrow(() -> profile("tank", modbus(0, 3), fields(FLOAT_AT_0, INT_AT_2)));
    assertDoesNotThrow(
        () ->
            profile(
                "source",
                line("(?i)(?<ec>\\d+) (?<t>\\d+) (?<u>.*)# ?"),
                fields(new Place.Group("ec", Optional.of("u")), new Place.Group("t"))));
  }

  @Test
  void aGroupThatThePatternLacksIsNamed() {
    Protocol.Line line = line("(?<ec>\\d+),(\\d+)");
    refused(
        "temperature is taken from group 't', but the pattern has no (?<t>…)",
        () -> profile("x", line, fields(new Place.Group("ec"), new Place.Group("t"))));
    refused(
        "unit of conductivity is taken from group 'unit', but the pattern has no (?<unit>…)",
        () ->
            profile(
                "x",
                line("(?<ec>\\d+),(?<t>\\d+)"),
                fields(new Place.Group("ec", Optional.of("unit")), new Place.Group("t"))));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "(?<ec>(?:a?|a?){60}c)",
        "(?<ec>[(\\])\\(]+)((x?)?){40}",
        "\\Q((\\E(?<ec>\\d+)(?:(?:,|)*){9}",
      })
  void aPatternThatRepeatsNothingManyTimesIsRefused(String pattern) {
    String message = assertThrows(IllegalArgumentException.class, () -> line(pattern)).toString();
    assertTrue(message.contains("though it may match nothing"), message);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "(?:[^,]*,){20}(?<ec>[^,]*)(?:,.*)?",
        "(?<ec>\\d{1,4}(?:\\.\\d{0,3})?)",
        "(?<ec>(\\d)(?:\\2,){2})",
        "[(]{2}(?<ec>\\d+)[)]{2}",
        "\\({2}(?<ec>\\d+)\\){2}",
        "(?:(?:a|b),){12}(?<ec>\\d+)"
      })
  void ordinaryRepeatsAreTaken(String pattern) {
    assertDoesNotThrow(() -> line(pattern));
  }

  @Test
  void aRegisterThatNoReadBringsIsNamed() {
    refused(
        "conductivity stands in registers 0 to 1 (function 3), but no read of the profile brings"
            + " it; add or widen a read",
        () -> profile("x", modbus(1, 4), fields(FLOAT_AT_0, INT_AT_2)));
    refused(
        "temperature stands in register 2 (function 3), but no read of the profile brings it; add"
            + " or widen a read",
        () -> profile("x", modbus(0, 2), fields(FLOAT_AT_0, INT_AT_2)));
  }

  @Test
  void fieldsOfTheOtherProtocolAreRefused() {
    refused(
        "conductivity stands in registers 0 to 1 (function 3), which a line profile does not have",
        () -> profile("x", line("(?<ec>.)"), fields(FLOAT_AT_0, INT_AT_2)));
    refused(
        "conductivity stands in group 'ec', which a Modbus profile does not have",
        () -> profile("x", modbus(0, 4), fields(new Place.Group("ec"), new Place.Group("t"))));
  }

  @Test
  void twoNumbersInOnePlaceAreRefused() {
    refused(
        "conductivity and temperature are both read from registers 0 to 1 (function 3); give each"
            + " its own place",
        () -> fields(FLOAT_AT_0, registers(1, Fields.Type.INT16)));
    refused(
        "conductivity and temperature are both read from group 'ec'; give each its own place",
        () -> fields(new Place.Group("ec"), new Place.Group("ec")));
  }

  @Test
  void placesOutsideTheProtocolAreRefused() {
    refused(
        "registers 65535 to 65536 are outside 0 to 65535; a manual that counts from 40001 or 30001"
            + " means register 0 by it",
        () -> registers(65535, Fields.Type.FLOAT32));
    refused(
        "octet order CDAB needs two registers, but int16 is one; use ABCD or BADC",
        () -> new Place.Registers(3, 0, Fields.Type.INT16, OctetOrder.CDAB, 1, 0));
    refused(
        "scale 0.0 is no factor; give a number other than 0",
        () -> new Place.Registers(3, 0, Fields.Type.INT16, OctetOrder.ABCD, 0, 0));
    refused(
        "offset NaN is no number",
        () -> new Place.Registers(3, 0, Fields.Type.INT16, OctetOrder.ABCD, 1, Double.NaN));
    refused(
        "function 6 is neither 3 (holding registers) nor 4 (input registers)",
        () -> new Protocol.Read(6, 0, 1));
    refused(
        "count 126 is outside 1 to 125 registers in one read", () -> new Protocol.Read(3, 0, 126));
    refused(
        "group 'my group' is no name of a group; use letters and digits, a letter first",
        () -> new Place.Group("my group"));
    refused(
        "group 'ec' cannot hold both the number and its unit",
        () -> new Place.Group("ec", Optional.of("ec")));
  }

  @Test
  void timesAndNamesOutsideTheirLimitsAreRefused() {
    Fields fields = fields(FLOAT_AT_0, INT_AT_2);
    refused(
        "interval 0 ms is outside 1 to 86400000 ms",
        () -> timed("x", modbus(0, 3), fields, 0, 300));
    refused(
        "longest reply 60001 ms is outside 1 to 60000 ms",
        () -> timed("x", modbus(0, 3), fields, 2000, 60001));
    refused(
        "profile name '../x' may have 1 to 64 letters, digits, dots, dashes and underscores",
        () -> profile("../x", modbus(0, 3), fields));
  }

  @Test
  void linesAndQueriesOutsideTheirLimitsAreRefused() {
    Pattern any = Pattern.compile(".*");
    refused(
        "longest line 4097 is outside 8 to 4096 octets",
        () -> new Protocol.Line(Optional.empty(), any, Optional.empty(), 4097));
    refused(
        "query of 0 octets is outside 1 to 256; leave it out if the instrument sends by itself",
        () -> new Protocol.Line(Optional.of(Octets.NONE), any, Optional.empty(), 64));
    refused("a Modbus profile needs 1 to 16 reads, not 0", () -> new Protocol.Modbus(List.of()));
  }

  @Test
  void ratingsThatCannotBeAreRefused() {
    refused(
        "rated conductivity 20.0 to 0.0 mS/cm is no range between 0 and 2000.0 mS/cm, lowest first",
        () -> facts(20, 0, 0, 50, Double.NaN, 2));
    refused(
        "rated temperature 0.0 to 300.0 °C is no range between -50.0 and 200.0 °C, lowest first",
        () -> facts(0, 20, 0, 300, Double.NaN, 2));
    refused(
        "resolution 0.0 mS/cm is not above 0 and at most 20.0 mS/cm; leave it out if the manual"
            + " does not state it",
        () -> facts(0, 20, 0, 50, 0, 2));
    refused(
        "accuracy 101.0 % is not above 0 and at most 100.0 %; leave it out if the manual does not"
            + " state it",
        () -> facts(0, 20, 0, 50, 0.001, 101));
  }
}
