package feedwitness.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each thing that can be wrong with a device profile is told with its place and a remedy. */
class ProfileFaultsTest {
  static final String MODBUS =
      """
      title = "Bus"
      interval = "2s"
      [serial]
      baud = 9600
      [modbus]
      reads = [
        { function = 3, start = 0, count = 4 },
      ]
      [conductivity]
      unit = "mS/cm"
      function = 3
      register = 0
      type = "float32"
      [temperature]
      unit = "°C"
      function = 3
      register = 2
      type = "float32"
      [instrument]
      compensation = "none"
      rated-conductivity = ["0 mS/cm", "20 mS/cm"]
      rated-temperature = ["0 °C", "50 °C"]
      """;
  static final String LINE =
      """
      title = "Lines"
      interval = "2s"
      [line]
      pattern = '(?<conductivity>\\S+),(?<temperature>\\S+)'
      [conductivity]
      unit = "µS/cm"
      [temperature]
      unit = "°C"
      [instrument]
      compensation = "to-25"
      rated-conductivity = ["0 µS/cm", "20000 µS/cm"]
      rated-temperature = ["32 °F", "122 °F"]
      """;

  @TempDir private Path folder;

  private void fault(String profile, String from, String to, String place, String... words) {
    assertTrue(profile.contains(from), from);
    Desk desk = new Desk(folder);
    desk.write("profiles/mine.toml", profile.replace(from, to));
    desk.only(
        ProfileShelf.read(desk.file("profiles")).problems(), "profiles/mine.toml:" + place, words);
  }

  @Test
  void readsBothPatternsUnharmed() {
    Desk desk = new Desk(folder);
    desk.write("profiles/bus.toml", MODBUS);
    desk.write("profiles/lines.toml", LINE);
    ProfileShelf shelf = ProfileShelf.read(desk.file("profiles"));
    assertTrue(shelf.problems().isEmpty(), () -> shelf.problems().toString());
    assertTrue(shelf.names().containsAll(List.of("bus", "lines", "pushed-csv")));
  }

  @Test
  void readsHowFarAnInstrumentScatters() {
    Desk desk = new Desk(folder);
    desk.write("profiles/bus.toml", MODBUS + "repeatability = \"0.3 %\"\n");
    desk.write("profiles/lines.toml", LINE);
    ProfileShelf shelf = ProfileShelf.read(desk.file("profiles"));
    assertEquals(0.3, shelf.find("bus").orElseThrow().instrument().repeatabilityPercent(), 0);
    assertTrue(Double.isNaN(shelf.find("lines").orElseThrow().instrument().repeatabilityPercent()));
  }

  @Test
  void showsWhereARegularExpressionIsBroken() {
    fault(
        LINE, "(?<temperature>\\S+)", "(?<temperature>\\S+", "4:1", "Unclosed group", "character");
    fault(LINE, "[conductivity]", "ignore = '['\n[conductivity]", "5:1", "ignore is no regular");
  }

  @Test
  void wantsTheGroupsInThePattern() {
    fault(LINE, "(?<conductivity>", "(?<ec>", "5:1", "no group named 'conductivity'", "(?<");
    fault(LINE, "unit = \"°C\"", "unit = \"°C\"\ngroup = \"temp\"", "9:1", "no group named 'temp'");
    fault(
        LINE,
        "\"µS/cm\"",
        "\"µS/cm\"\nunit-group = \"u\"",
        "7:1",
        "no group named 'u'",
        "the unit");
    fault(LINE, "\"°C\"", "\"°C\"\ngroup = \"conductivity\"", "7:1", "both read from");
  }

  @Test
  void wantsEveryRegisterCoveredByARead() {
    fault(MODBUS, "count = 4", "count = 3", "17:1", "registers 2 to 3, function 3, are in no read");
    fault(MODBUS, "function = 3\nregister = 0", "function = 4\nregister = 0", "12:1", "function 4");
  }

  @Test
  void namesTheRangesOfModbus() {
    fault(MODBUS, "count = 4", "count = 126", "7:30", "count 126 is outside 1 to 125");
    fault(MODBUS, "{ function = 3", "{ function = 6", "7:5", "function 6 is outside 3 to 4");
    fault(MODBUS, "start = 0", "start = 65535", "7:34", "go past 65535");
    fault(MODBUS, "start = 0, ", "", "6:10", "'start' is missing");
    fault(MODBUS, "register = 2", "register = 40003", "17:1", "in no read");
    fault(MODBUS, "  { function = 3, start = 0, count = 4 },\n", "", "6:1", "at least one read");
  }

  @Test
  void aContactStandsInAPlaceOfItsOwn() {
    String contact = "[contact]\nfunction = 3\nregister = %s\ntype = \"uint16\"\n[instrument]";
    fault(MODBUS, "[instrument]", contact.formatted("4"), "21:1", "are in no read");
    fault(MODBUS, "[instrument]", contact.formatted("3"), "19:1", "like another field");
    fault(
        MODBUS,
        "[instrument]",
        "[contact]\nclosed-is = \"on\"\n[instrument]",
        "20:1",
        "'on' is not one of",
        "not zero");
    fault(LINE, "[instrument]", "[contact]\n[instrument]", "9:1", "no group named 'contact'");
  }

  @Test
  void refusesTypesAndOrdersThatDoNotFit() {
    fault(MODBUS, "\"float32\"\n[t", "\"float\"\n[t", "13:1", "'float' is not one of", "float32");
    fault(
        MODBUS,
        "\"float32\"\n[t",
        "\"int16\"\norder = \"CDAB\"\n[t",
        "14:1",
        "'CDAB' is not one of ABCD, BADC");
    fault(MODBUS, "register = 0\n", "register = 0\nscale = 0\n", "13:1", "scale 0");
  }

  @Test
  void keepsTheKeysOfTheTwoProtocolsApart() {
    fault(LINE, "\"µS/cm\"", "\"µS/cm\"\nregister = 0", "7:1", "'register' is for Modbus");
    fault(
        MODBUS, "register = 0\n", "register = 0\ngroup = \"ec\"\n", "13:1", "'group' is for lines");
    fault(
        LINE,
        "[conductivity]",
        "[modbus]\nreads = [{function=3,start=0,count=1}]\n[conductivity]",
        "5:1",
        "not both");
    fault(
        LINE,
        "[line]\npattern = '(?<conductivity>\\S+),(?<temperature>\\S+)'\n",
        "",
        "1:1",
        "'line' is missing",
        "[line] or [modbus]");
  }

  @Test
  void wantsWhatTheMakerStates() {
    fault(LINE, "title = \"Lines\"\n", "", "1:1", "'title' is missing");
    fault(LINE, "interval = \"2s\"\n", "", "1:1", "'interval' is missing");
    fault(LINE, "compensation = \"to-25\"\n", "", "9:1", "'compensation' is missing");
    fault(LINE, "\"to-25\"", "\"25\"", "10:1", "'25' is not one of none, to-25");
    fault(LINE, "unit = \"µS/cm\"\n", "", "5:1", "'unit' is missing");
  }

  @Test
  void readsNumbersOnlyWithTheirUnits() {
    fault(LINE, "\"0 µS/cm\"", "\"0\"", "11:1", "'0' is no conductivity with its unit");
    fault(LINE, "\"0 µS/cm\"", "0", "11:1", "2 entries, 1 of them text");
    fault(LINE, "\"20000 µS/cm\"", "\"2,5 mS/cm\"", "11:1", "decimal comma; write 2.5 mS/cm");
    fault(
        LINE, "\"32 °F\", \"122 °F\"", "\"122 °F\", \"32 °F\"", "12:1", "50 °C is not below 0 °C");
    fault(LINE, "\"122 °F\"", "\"122 K\"", "12:1", "no temperature with its unit");
    fault(LINE, "\"°C\"", "\"K\"", "8:1", "'K' is no unit of temperature", "°F");
    fault(LINE, "[instrument]", "[instrument]\naccuracy = \"2\"", "10:1", "unit %");
    fault(LINE, "[instrument]", "[instrument]\naccuracy = \"0 %\"", "10:1", "not above 0");
    fault(LINE, "[instrument]", "[instrument]\nresolution = \"1 mg/L\"", "10:1", "no unit");
    fault(LINE, "[instrument]", "[instrument]\nrepeatability = \"0.3\"", "10:1", "unit %");
  }

  @Test
  void tellsOfAPatternThatCouldTakeForEverAtItsKey() {
    fault(LINE, "(?<temperature>\\S+)", "(?<temperature>\\S*){9}", "4:1", "may match nothing");
    fault(LINE, "[conductivity]", "ignore = '(a*){9}'\n[conductivity]", "5:1", "may match nothing");
  }

  @Test
  void letsALineEndBeAllAnInstrumentIsAskedWith() {
    Desk desk = new Desk(folder);
    String asked = LINE.replace("[conductivity]", "query = \"\\r\"\n[conductivity]");
    desk.write("profiles/mine.toml", asked);
    ProfileShelf shelf = ProfileShelf.read(desk.file("profiles"));
    assertTrue(shelf.problems().isEmpty(), () -> shelf.problems().toString());
    desk.write("profiles/mine.toml", asked.replace("\\r", ""));
    desk.only(
        ProfileShelf.read(desk.file("profiles")).problems(),
        "profiles/mine.toml:5:1",
        "query of 0 octets is outside 1 to 256",
        "leave it out");
  }

  @Test
  void namesTheRangesOfTheLine() {
    fault(MODBUS, "9600", "100", "4:1", "baud 100 is outside 300 to 1000000");
    fault(MODBUS, "baud = 9600", "parity = \"mark\"", "4:1", "none, even, odd");
    fault(LINE, "[conductivity]", "longest-line = 5\n[conductivity]", "5:1", "outside 8 to 4096");
    fault(LINE, "[conductivity]", "query = \"€\"\n[conductivity]", "5:1", "not one octet");
    fault(LINE, "\"2s\"", "\"25h\"", "2:1", "interval 25h is outside 1ms to 1d");
    fault(LINE, "\"2s\"", "\"2s\"\nlongest-reply = \"2min\"", "3:1", "outside 1ms to 1min");
  }

  @Test
  void refusesAFileNameThatIsNoName() {
    Desk desk = new Desk(folder);
    desk.write("profiles/my probe.toml", LINE);
    desk.only(
        ProfileShelf.read(desk.file("profiles")).problems(),
        "profiles/my probe.toml:1:1",
        "'my probe'",
        "rename the file");
  }
}
