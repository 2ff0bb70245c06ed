package feedwitness.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each thing that can be wrong with a configuration is told with its place and a remedy. */
class ConfigFaultsTest {
  private static final String TANK =
      """
      [[point]]
      name = "tank"
      place = "tank"
      port = "/dev/serial/by-id/bus"
      profile = "modbus-float"
      unit = 11
      """;
  private static final String SOURCE =
      """
      [[point]]
      name = "source"
      place = "source"
      port = "/dev/serial/by-id/filter"
      profile = "pushed-csv"
      """;

  @TempDir private Path folder;

  private Desk desk() {
    return new Desk(folder);
  }

  private void fault(String points, String place, String... words) {
    desk().fault(Desk.NURSERY + points, place, words);
  }

  @Test
  void suggestsTheNearestKeyForAnUnknownOne() {
    fault(TANK + "tilte = \"Tank\"\n", "11:1", "point 'tank'", "'tilte'", "did you mean 'title'?");
    fault("[sever]\nlisten = \"127.0.0.1:8460\"\n", "5:1", "did you mean 'server'?");
    fault(TANK + "percent_per_kelvin = 1.9\n", "11:1", "did you mean 'percent-per-kelvin'?");
  }

  @Test
  void listsTheKeysWhereNoneIsNear() {
    fault(
        "[store]\ncolour = \"red\"\n",
        "6:1",
        "'colour' is unknown",
        "directory, free-floor, keep-raw, sync-every");
  }

  @Test
  void namesWhatIsWrongWithTheStoreAndTheClock() {
    fault("[store]\nfree-floor = \"200\"\n", "6:1", "'200' is no size", "200MB");
    fault("[store]\nfree-floor = \"1,5GB\"\n", "6:1", "decimal comma", "1.5GB");
    fault("[store]\nfree-floor = \"1MB\"\n", "6:1", "1MB is outside 20MB to 100000MB");
    fault("[store]\nfree-floor = 200\n", "6:1", "free-floor = 200 is a number");
    fault("[store]\nkeep-raw = \"12h\"\n", "6:1", "12h is shorter than 1d", "for-ever");
    fault("[store]\nkeep-raw = \"for ever\"\n", "6:1", "is no duration", "for-ever");
    fault("[clock]\ntrust = \"never\"\n", "6:1", "neither synchronised nor always");
    fault("[clock]\ntrusted = true\n", "6:1", "did you mean 'trust'?");
  }

  @Test
  void namesAMissingKeyAtItsTable() {
    fault("[[point]]\nname = \"drain\"\n", "5:1", "'place' is missing", "source, tank, line");
    fault("[[point]]\nplace = \"drain\"\n", "5:1", "point number 1", "'name' is missing");
    desk().fault("[nursery]\nname = \"Quarry End\"\n", "1:1", "'zone' is missing", "Europe/London");
    desk().fault("", "1:1", "'nursery' is missing");
  }

  @Test
  void saysWhatKindOfValueIsExpected() {
    fault(TANK.replace("11", "\"11\""), "10:1", "is text, not a whole number", "unit = 11,");
    fault(TANK.replace("11", "11.5"), "10:1", "is a number, not a whole number");
    fault(
        TANK + "instrument-compensates = \"true\"\n",
        "11:1",
        "is text, not true or false",
        "instrument-compensates = true");
    fault("[store]\nsync-every = 10\n", "6:1", "is a number, not text", "with its unit");
    fault("[[point]]\nname = 7\nplace = \"line\"\n", "6:1", "name = 7 is a number, not text");
    desk().fault("nursery = 5\n", "1:1", "nursery = 5 is a number, not a table");
  }

  @Test
  void readsADecimalCommaInQuotationMarksAsWhatItIs() {
    fault(
        TANK + "percent-per-kelvin = \"1,88\"\n",
        "11:1",
        "is text, not a number",
        "percent-per-kelvin = 1.88");
  }

  @Test
  void namesTheRangeOfANumber() {
    fault(TANK.replace("11", "248"), "10:1", "unit 248 is outside 1 to 247");
    fault(TANK.replace("11", "0"), "10:1", "unit 0 is outside 1 to 247");
    fault(TANK + "percent-per-kelvin = 18.8\n", "11:1", "18.8 %/K is outside 0.5 to 4 %/K");
    fault(TANK + "percent-per-kelvin = nan\n", "11:1", "NaN %/K is outside");
    fault("[store]\nsync-every = \"5min\"\n", "6:1", "sync-every 5min is outside 1s to 1min");
  }

  @Test
  void refusesUnitsItDoesNotKnow() {
    fault(TANK + "conductivity-unit = \"mS\"\n", "11:1", "'mS' is no unit", "µS/cm, mS/cm");
    fault(TANK + "conductivity-unit = \"ppm\"\n", "11:1", "'ppm' is no unit", "500, 640 or 700");
    fault("[store]\nsync-every = \"10 sec\"\n", "6:1", "'10 sec' is no duration", "2s");
  }

  @Test
  void listsTheProfilesThereAre() {
    fault(
        TANK.replace("modbus-float", "modbus-flaot"),
        "9:1",
        "no device profile 'modbus-flaot'",
        "did you mean 'modbus-float'?",
        "pushed-csv");
  }

  @Test
  void refusesTwoPointsOfOneName() {
    fault(
        TANK + SOURCE.replace("\"source\"", "\"tank\""),
        "12:1",
        "another point has this name",
        "feedwitness.toml:6)");
  }

  @Test
  void refusesTwoPointsOnOneAddress() {
    fault(
        TANK + TANK.replace("name = \"tank\"", "name = \"line\""),
        "16:1",
        "address 11 on /dev/serial/by-id/bus is taken by point 'tank'",
        "feedwitness.toml:6)");
  }

  @Test
  void refusesTwoLineProbesOnOnePort() {
    fault(
        SOURCE + SOURCE.replace("name = \"source\"", "name = \"line\""),
        "13:1",
        "this port is taken by point 'source'",
        "a port of its own");
  }

  @Test
  void refusesLinesAndModbusOnOnePort() {
    fault(TANK + SOURCE.replace("filter", "bus"), "14:1", "only Modbus probes can share one");
  }

  @Test
  void refusesDifferentLineSettingsOnOnePort() {
    desk()
        .write(
            "profiles/fast.toml", ProfileFaultsTest.MODBUS.replace("baud = 9600", "baud = 19200"));
    fault(
        TANK
            + TANK.replace("\"tank\"\np", "\"line\"\np")
                .replace("modbus-float", "fast")
                .replace("11", "12"),
        "15:1",
        "19200 8N1",
        "point 'tank' on the same port has it at 9600 8N1");
  }

  @Test
  void wantsAnAddressOnABusAndNoneElsewhere() {
    fault(TANK.replace("unit = 11\n", ""), "5:1", "'unit' is missing", "1 to 247");
    fault(
        SOURCE + "unit = 4\n", "10:1", "'unit' is for Modbus, but profile pushed-csv sends lines");
  }

  @Test
  void wantsAProfileForAPortAndAPortForAProfile() {
    fault(SOURCE.replace("profile = \"pushed-csv\"\n", ""), "5:1", "'profile' is missing");
    fault(
        "[[point]]\nname = \"drain\"\nplace = \"drain\"\nprofile = \"pushed-csv\"\n",
        "8:1",
        "this one has no port",
        "typed in");
  }

  @Test
  void suggestsATimeZone() {
    desk()
        .fault(
            "[nursery]\nname = \"Quarry End\"\nzone = \"London\"\n",
            "3:1",
            "zone 'London' is no time zone",
            "did you mean 'Europe/London'?");
    desk().fault("[nursery]\nname = \"Q\"\nzone = \"Europe/Lodnon\"\n", "3:1", "'Europe/London'?");
    desk()
        .fault("[nursery]\nname = \"Q\"\nzone = \"at the quarry\"\n", "3:1", "continent and city");
  }

  @Test
  void refusesPortTextsThatAreNeitherPathNorTcp() {
    fault(
        TANK.replace("/dev/serial/by-id/bus", "ttyUSB0"), "8:1", "'ttyUSB0'", "feedwitness ports");
    fault(TANK.replace("/dev/serial/by-id/bus", "tcp:192.0.2.7"), "8:1", "not tcp:HOST:PORT");
    fault(TANK.replace("/dev/serial/by-id/bus", "tcp:192.0.2.7:70000"), "8:1", "1 to 65535");
  }

  @Test
  void refusesACoefficientForAnotherCompensation() {
    fault(
        TANK + "compensation = \"iso7888\"\npercent-per-kelvin = 1.9\n",
        "12:1",
        "'percent-per-kelvin' is for linear compensation");
    fault(TANK + "compensation = \"ISO7888\"\n", "11:1", "did you mean 'iso7888'?");
  }

  @Test
  void refusesPlacesAndNamesItDoesNotKnow() {
    fault(TANK.replace("place = \"tank\"", "place = \"barrel\""), "7:1", "'barrel' is not one of");
    fault(TANK.replace("name = \"tank\"", "name = \"Tank 1\""), "6:1", "'Tank 1'", "lower-case");
    fault(
        TANK + "title = \"" + "x".repeat(81) + "\"\n",
        "11:1",
        "title has 81 characters, at most 80 fit");
    fault(TANK + "title = \" \"\n", "11:1", "'title' is empty");
  }

  @Test
  void refusesAListenAddressWithoutAPort() {
    fault("[server]\nlisten = \"127.0.0.1\"\n", "6:1", "not HOST:PORT", "127.0.0.1:8460");
  }

  @Test
  void refusesAStoreDirectoryOnlyAShellWouldFind() {
    fault("[store]\ndirectory = \"~/feed\"\n", "6:1", "begins with ~", "the whole path");
  }

  @Test
  void refusesAnOverridingUnitWhereTheLineStatesIt() {
    fault(
        SOURCE.replace("pushed-csv", "query-reply") + "conductivity-unit = \"mS/cm\"\n",
        "10:1",
        "reads the unit from each line");
  }

  @Test
  void wantsTwoBracketsForAPoint() {
    fault("[point]\nname = \"tank\"\n", "5:1", "write [[point]]");
  }

  @Test
  void namesAFileThatCannotBeRead() {
    desk().only(Desk.wrong(desk().read()), "feedwitness.toml:1:1", "there is no such file");
  }

  @Test
  void namesAFileThatIsNoText() throws Exception {
    Files.write(
        folder.resolve("feedwitness.toml"),
        "title = \"Düse\"".getBytes(StandardCharsets.ISO_8859_1));
    desk().only(Desk.wrong(desk().read()), "feedwitness.toml:1:1", "not UTF-8", "save it as UTF-8");
  }

  @Test
  void namesAFileFarTooLong() {
    desk().fault("#".repeat(TomlFile.LONGEST + 1), "1:1", "262145 octets are more than the 262144");
  }

  @Test
  void tellsOfPointsThatClashWithThePagesOwn() {
    desk().write(ConfigFiles.GENERATED, TANK);
    desk().write("feedwitness.toml", Desk.NURSERY + TANK);
    desk()
        .only(
            Desk.wrong(desk().read()),
            "feedwitness.generated.toml:2:1",
            "another point has this name",
            "feedwitness.toml:6)");
  }

  @Test
  void keepsTheGeneratedFileToPoints() {
    desk().write(ConfigFiles.GENERATED, "[server]\nlisten = \"127.0.0.1:80\"\n");
    desk().write("feedwitness.toml", Desk.NURSERY);
    desk().only(Desk.wrong(desk().read()), "feedwitness.generated.toml:1:1", "'server' is unknown");
  }

  @Test
  void tellsAllFaultsOfAllFilesAtOnce() {
    desk().write("profiles/mine.toml", "title = \"Mine\"\n");
    desk().write(ConfigFiles.GENERATED, "[[point]]\nname = \"drain\"\nplace = \"gutter\"\n");
    desk()
        .write(
            "feedwitness.toml",
            """
            [nursery]
            name = Quarry End
            zone = "Lundon"

            [[point]]
            name = "tank"
            place = "tank"
            port = "COM3"
            profile = "mine"
            unit = 300
            """);
    List<String> places =
        Desk.wrong(desk().read()).stream()
            .map(p -> p.file().getFileName() + ":" + p.line() + ":" + p.column())
            .toList();
    assertEquals(
        List.of(
            "feedwitness.toml:2:8",
            "feedwitness.toml:3:1",
            "feedwitness.toml:8:1",
            "feedwitness.toml:10:1",
            "feedwitness.generated.toml:3:1"),
        places.subList(0, 5));
    assertTrue(places.contains("mine.toml:1:1"), places::toString);
  }

  @Test
  void namesTheKeyForWhoeverShowsItBesideAnInput() {
    desk().write("feedwitness.toml", Desk.NURSERY + TANK.replace("11", "300"));
    assertEquals("unit", Desk.wrong(desk().read()).get(0).key());
  }
}
