package feedwitness.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.frame.FrameOutcome.Frame;
import feedwitness.profile.Fields;
import feedwitness.profile.Fields.Place;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.Octets;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.DecodeOutcome.Decoded;
import feedwitness.sample.DecodeOutcome.Ignored;
import feedwitness.sample.DecodeOutcome.Refused;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers out of text lines. */
class LineDecoderTest {
  /** Captures whatever stands between commas, so that the decoder has to judge it. */
  private static final Decoder ANYTHING =
      Decoder.of(
          FamilyProfiles.around(
              FamilyProfiles.line(
                  "", "(?<conductivity>[^;]*);(?<temperature>[^;]*)?(?:;(?<unit>.*))?", "#.*"),
              FamilyProfiles.groups(ConductivityUnit.MICROSIEMENS_PER_CM, Optional.empty())));

  private static final Decoder WITH_UNIT =
      Decoder.of(
          FamilyProfiles.around(
              FamilyProfiles.line(
                  "", "(?<conductivity>[^;]*);(?<temperature>[^;]*)(?:;(?<unit>.*))?", ""),
              FamilyProfiles.groups(ConductivityUnit.MICROSIEMENS_PER_CM, Optional.of("unit"))));

  private static DecodeOutcome decode(Decoder decoder, String line) {
    return decoder.decode(List.of(new Frame(Octets.ofText(line))));
  }

  private static Reading reading(Decoder decoder, String line) {
    return assertInstanceOf(Decoded.class, decode(decoder, line)).reading();
  }

  private static String refusal(Decoder decoder, String line) {
    Refused refused = assertInstanceOf(Refused.class, decode(decoder, line));
    assertEquals(Missing.Cause.UNREADABLE, refused.cause());
    return refused.text();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "351.2 | 351.2",
        "+351 | 351",
        "-0.25 | -0.25",
        ".5 | 0.5",
        "5. | 5",
        "1,413 | 1.413",
        "1.413E3 | 1413",
        "' 12 ' | 12",
        "0000000000000351.2 | 351.2"
      })
  void readsNumbersAsInstrumentsWriteThem(String text, double value) {
    assertEquals(value, reading(ANYTHING, text + ";12").conductivity());
    assertEquals(value, reading(ANYTHING, "12;" + text).temperature());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1.413.2",
        "1,413.2",
        "1.413,2",
        "12a",
        "0x1F",
        "1f",
        "1d",
        "--1",
        "- 1",
        "OVER",
        "---",
        "1 413",
        "Infinity",
        "1e999",
        "1e",
        "e5",
        ".",
        "99999999999999999999999999999999999999999"
      })
  void refusesWhatIsNoNumberAndNamesIt(String text) {
    assertEquals("conductivity '" + text + "' is no number", refusal(ANYTHING, text + ";12"));
    assertEquals("temperature '" + text + "' is no number", refusal(ANYTHING, "12;" + text));
  }

  @Test
  void aMissingTemperatureIsNoReasonToLoseTheConductivity() {
    Decoded decoded = assertInstanceOf(Decoded.class, decode(ANYTHING, "351.2;"));
    assertEquals(351.2, decoded.reading().conductivity());
    assertTrue(Double.isNaN(decoded.reading().temperature()));
    assertEquals("no temperature in group 'temperature'", decoded.remark());
  }

  @Test
  void noNumberTravelsAndIsSaid() {
    Decoded decoded = assertInstanceOf(Decoded.class, decode(ANYTHING, "NaN;12.4"));
    assertTrue(Double.isNaN(decoded.reading().conductivity()));
    assertEquals("no conductivity: group 'conductivity' holds NaN", decoded.remark());
  }

  @Test
  void anInstrumentWithoutTemperatureGivesNone() {
    Decoder decoder =
        Decoder.of(
            FamilyProfiles.around(
                FamilyProfiles.line("", "(?<ec>.*)", ""),
                new Fields(
                    new Place.Group("ec"),
                    ConductivityUnit.CF,
                    Optional.empty(),
                    TemperatureUnit.CELSIUS)));
    Decoded decoded = assertInstanceOf(Decoded.class, decode(decoder, "15"));
    assertEquals(1.5, decoded.reading().conductivityMilliSiemensPerCm(), 1e-12);
    assertTrue(Double.isNaN(decoded.reading().temperatureCelsius()));
    assertEquals("", decoded.remark());
  }

  @Test
  void theUnitInTheLineGoesBeforeThatOfTheProfile() {
    assertEquals(
        ConductivityUnit.MILLISIEMENS_PER_CM,
        reading(WITH_UNIT, "1.4;20;mS/cm").conductivityUnit());
    assertEquals(
        1.4, reading(WITH_UNIT, "1400;20;\u00b5S/cm").conductivityMilliSiemensPerCm(), 1e-12);
    assertEquals(
        ConductivityUnit.MICROSIEMENS_PER_CM, reading(ANYTHING, "1.4;20;mS/cm").conductivityUnit());
  }

  @Test
  void aMissingOrUnknownUnitIsNeverGuessed() {
    assertEquals(
        "unit 'ppm' of conductivity 1.4 is not known; set the instrument to one that is",
        refusal(WITH_UNIT, "1.4;20;ppm"));
    assertEquals(
        "conductivity 1.4 has no unit in '1.4;20'; a unit is never guessed",
        refusal(WITH_UNIT, "1.4;20"));
  }

  @Test
  void aTemperatureMayNameItsUnitToo() {
    Decoder decoder =
        Decoder.of(
            FamilyProfiles.around(
                FamilyProfiles.line("", "(?<ec>\\S+) (?<t>\\S+) (?<unit>\\S+)", ""),
                new Fields(
                    new Place.Group("ec"),
                    ConductivityUnit.MILLISIEMENS_PER_CM,
                    Optional.of(new Place.Group("t", Optional.of("unit"))),
                    TemperatureUnit.CELSIUS)));
    assertEquals(25, reading(decoder, "1.4 77 F").temperatureCelsius(), 1e-12);
    assertEquals(25, reading(decoder, "1.4 25 \u00b0C").temperatureCelsius(), 1e-12);
    assertTrue(refusal(decoder, "1.4 298 K").contains("'K'"));
  }

  @Test
  void aLineThatDoesNotFitIsNotUnderstoodAndAHeadingIsIgnored() {
    assertTrue(refusal(ANYTHING, "hello").startsWith("'hello' does not fit the profile's pattern"));
    assertInstanceOf(Ignored.class, decode(ANYTHING, "# hello"));
  }

  @Test
  void aLongLineIsShownShort() {
    assertTrue(refusal(ANYTHING, "x".repeat(4000)).length() < 200);
  }

  @Test
  void aReadingIsOneLine() {
    assertInstanceOf(Refused.class, ANYTHING.decode(List.of()));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "(?<conductivity>(\\d+)+)!",
        "(?<conductivity>(?:\\d|\\d\\d)*)!",
        "(?<conductivity>(a|[0-9])*)!"
      })
  void aRunawayPatternDoesNotHangTheWire(String pattern) {
    Decoder decoder =
        Decoder.of(
            FamilyProfiles.around(
                FamilyProfiles.line("", pattern, ""),
                new Fields(
                    new Place.Group("conductivity"),
                    ConductivityUnit.CF,
                    Optional.empty(),
                    TemperatureUnit.CELSIUS)));
    String text = refusal(decoder, "1".repeat(4096));
    assertTrue(text.contains("pattern"), text);
  }
}
