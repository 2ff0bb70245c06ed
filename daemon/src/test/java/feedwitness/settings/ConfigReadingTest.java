package feedwitness.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.profile.InstrumentFacts;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.ListenAddress;
import feedwitness.quantity.PointName;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ConfigReadingTest {
  private static final String WHOLE =
      """
      [nursery]
      name = "Quarry End Nursery"
      zone = "Europe/London"

      [server]
      listen = "127.0.0.1:8461"

      [store]
      directory = "/var/lib/feedwitness"
      sync-every = "30s"

      [[point]]
      name = "source"
      title = "Borehole after the filter"
      place = "source"
      port = "/dev/serial/by-id/usb-serial-source"
      profile = "pushed-csv"
      compensation = "iso7888"

      [[point]]
      name = "tank"
      title = "Mixing tank"
      place = "tank"
      port = "/dev/serial/by-id/usb-rs485"
      profile = "modbus-float"
      unit = 11
      percent-per-kelvin = 1.83

      [[point]]
      name = "line"
      place = "line"
      port = "/dev/serial/by-id/usb-rs485"
      profile = "modbus-scaled"
      unit = 12
      conductivity-unit = "mS/cm"
      instrument-compensates = true

      [[point]]
      name = "drain"
      place = "drain"
      compensation = "none"
      """;

  @TempDir private Path folder;

  private static MeasuringPoint point(Config config, String name) {
    return config.site().points().stream()
        .filter(point -> point.name().equals(new PointName(name)))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void readsTheWholeNursery() {
    ConfigOutcome.Read read = new Desk(folder).right(WHOLE);
    Config config = read.config();
    assertEquals("Quarry End Nursery", config.site().name());
    assertEquals(ZoneId.of("Europe/London"), config.site().zone());
    assertEquals(new ListenAddress("127.0.0.1", 8461), config.listen());
    assertEquals(Path.of("/var/lib/feedwitness"), config.storeDirectory());
    assertEquals(Duration.ofSeconds(30), config.syncEvery());
    assertEquals(4, config.site().points().size());
    assertEquals(List.of(), read.notes());

    MeasuringPoint source = point(config, "source");
    assertEquals("Borehole after the filter", source.title());
    assertEquals(MeasuringPoint.Place.SOURCE, source.place());
    assertEquals(new CompensationChoice.Iso7888(), source.compensation());
    assertEquals(
        new LinkAddress.Serial("/dev/serial/by-id/usb-serial-source"),
        source.probe().orElseThrow().link());
    assertEquals(11, point(config, "tank").probe().orElseThrow().unit());
    assertEquals(new CompensationChoice.Linear(1.83), point(config, "tank").compensation());
    assertEquals(Optional.empty(), point(config, "drain").probe());
    assertEquals(new CompensationChoice.None(), point(config, "drain").compensation());
    assertEquals("drain", point(config, "drain").title());
  }

  @Test
  void letsAPointSayWhatItsInstrumentDoesOtherwise() {
    var profile =
        point(new Desk(folder).right(WHOLE).config(), "line").probe().orElseThrow().profile();
    assertEquals(ConductivityUnit.MILLISIEMENS_PER_CM, profile.fields().conductivityUnit());
    assertEquals(InstrumentFacts.Compensation.TO_25, profile.instrument().compensation());
    assertEquals("modbus-scaled", profile.name());
    assertEquals(20, profile.instrument().maxMilliSiemensPerCm(), 1e-9);
  }

  @Test
  void fillsInDefaults() {
    Config config = new Desk(folder).right(Desk.NURSERY).config();
    assertEquals(ListenAddress.DEFAULT, config.listen());
    assertEquals(folder.resolve("feedwitness-data"), config.storeDirectory());
    assertEquals(Duration.ofSeconds(10), config.syncEvery());
    assertEquals(List.of(), config.site().points());
    Config feed =
        new Desk(folder)
            .right(Desk.NURSERY + "[[point]]\nname = \"tank\"\nplace = \"tank\"\n")
            .config();
    assertEquals(new CompensationChoice.Linear(1.88), point(feed, "tank").compensation());
  }

  @Test
  void findsARelativeStoreBesideTheConfiguration() {
    Config config =
        new Desk(folder).right(Desk.NURSERY + "[store]\ndirectory = \"kept\"\n").config();
    assertEquals(folder.resolve("kept"), config.storeDirectory());
  }

  @Test
  void startsWithoutAnyConfiguration() {
    ConfigOutcome outcome =
        ConfigReader.read(ConfigFiles.without(folder.resolve("data"), Desk.ZONE));
    Config config = Desk.right(outcome).config();
    assertEquals(List.of(), config.site().points());
    assertEquals(Desk.ZONE, config.site().zone());
    assertEquals(folder.resolve("data"), config.storeDirectory());
    assertEquals(ListenAddress.DEFAULT, config.listen());
    assertTrue(config.profiles().size() >= 5);
  }

  @Test
  void addsThePointsOfThePageToTheUsersOwn() {
    Desk desk = new Desk(folder);
    desk.write(ConfigFiles.GENERATED, "[[point]]\nname = \"bench\"\nplace = \"other\"\n");
    assertEquals(5, desk.right(WHOLE).config().site().points().size());
  }

  @Test
  void takesPortsThatAreNotThereYet() {
    assertEquals(4, new Desk(folder).right(WHOLE).config().site().points().size());
  }

  @Test
  void letsProbesBehindOneSerialServerShareIt() {
    String bus = WHOLE.replace("/dev/serial/by-id/usb-rs485", "tcp:192.0.2.7:4001");
    MeasuringPoint line = point(new Desk(folder).right(bus).config(), "line");
    assertEquals(new LinkAddress.Tcp("192.0.2.7", 4001), line.probe().orElseThrow().link());
  }

  @Test
  void prefersTheUsersProfileAndSaysSo() {
    Desk desk = new Desk(folder);
    desk.write("profiles/pushed-csv.toml", ProfileFaultsTest.LINE);
    ConfigOutcome.Read read = desk.right(WHOLE);
    assertEquals("Lines", point(read.config(), "source").probe().orElseThrow().profile().title());
    assertEquals(1, read.notes().size());
    assertTrue(read.notes().get(0).contains("instead of the built-in profile 'pushed-csv'"));
  }
}
