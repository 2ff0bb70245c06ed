package feedwitness.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.PointName;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page sets points up; the user's own file stays as it is. */
class GeneratedConfigTest {
  @TempDir private Path folder;

  private static GeneratedPoint typed(String name, String title) {
    return new GeneratedPoint(
        new PointName(name),
        title,
        MeasuringPoint.Place.DRAIN,
        Optional.empty(),
        new CompensationChoice.None());
  }

  private static GeneratedPoint onBus(String name, int unit) {
    return new GeneratedPoint(
        new PointName(name),
        "Mixing tank",
        MeasuringPoint.Place.TANK,
        Optional.of(
            new GeneratedPoint.Probe(
                "/dev/serial/by-id/bus",
                "modbus-scaled",
                unit,
                Optional.of("mS/cm"),
                Optional.of(true))),
        new CompensationChoice.Linear(1.83));
  }

  private ConfigFiles alone() {
    return ConfigFiles.without(folder.resolve("data"), Desk.ZONE);
  }

  private static List<MeasuringPoint> points(ConfigOutcome outcome) {
    return Desk.right(outcome).config().site().points();
  }

  @Test
  void readsBackWhatItWrote() throws IOException {
    ConfigOutcome saved = GeneratedConfig.save(alone(), onBus("tank", 11));
    assertEquals(points(saved).toString(), points(ConfigReader.read(alone())).toString());
    MeasuringPoint tank = points(saved).get(0);
    assertEquals("Mixing tank", tank.title());
    assertEquals(11, tank.probe().orElseThrow().unit());
    assertEquals(new CompensationChoice.Linear(1.83), tank.compensation());
    String text = Files.readString(alone().generated());
    assertTrue(text.startsWith("# Written by Feedwitness"), text);
    assertTrue(text.contains("unit = 11\n"), text);
  }

  @Test
  void keepsEarlierPointsAndReplacesTheOneOfThatName() {
    GeneratedConfig.save(alone(), onBus("tank", 11));
    GeneratedConfig.save(alone(), typed("drain", "Old \"bench\" C:\\ µS"));
    GeneratedConfig.save(alone(), onBus("line", 12));
    ConfigOutcome saved = GeneratedConfig.save(alone(), onBus("tank", 13));
    List<MeasuringPoint> points = points(saved);
    assertEquals(
        List.of("tank", "drain", "line"), points.stream().map(p -> p.name().text()).toList());
    assertEquals(13, points.get(0).probe().orElseThrow().unit());
    assertEquals("Old \"bench\" C:\\ µS", points.get(1).title());
    assertTrue(
        Desk.right(ConfigReader.read(alone())).config().profiles().size() >= 5,
        "profiles come with it");
  }

  @Test
  void removesAPoint() {
    GeneratedConfig.save(alone(), onBus("tank", 11));
    GeneratedConfig.save(alone(), typed("drain", "Bench"));
    assertEquals(1, points(GeneratedConfig.remove(alone(), new PointName("tank"))).size());
    assertEquals(1, points(GeneratedConfig.remove(alone(), new PointName("tank"))).size());
    assertEquals(1, points(ConfigReader.read(alone())).size());
  }

  @Test
  void writesNothingWhileAnythingIsWrong() throws IOException {
    GeneratedConfig.save(alone(), onBus("tank", 11));
    String before = Files.readString(alone().generated());
    List<Problem> clash = Desk.wrong(GeneratedConfig.save(alone(), onBus("line", 11)));
    assertEquals("unit", clash.get(0).key());
    List<Problem> range = Desk.wrong(GeneratedConfig.save(alone(), onBus("line", 300)));
    assertTrue(range.get(0).message().contains("300 is outside 1 to 247"), range::toString);
    List<Problem> lines = Desk.wrong(GeneratedConfig.save(alone(), typed("drain", "a\nb")));
    assertEquals("title", lines.get(0).key());
    assertEquals(before, Files.readString(alone().generated()));
  }

  @Test
  void leavesTheUsersFileAlone() throws IOException {
    Desk desk = new Desk(folder);
    String own = Desk.NURSERY + "[[point]]\nname = \"drain\"\nplace = \"drain\"\n";
    desk.right(own);
    assertEquals(2, points(GeneratedConfig.save(desk.files(), onBus("tank", 11))).size());
    assertEquals(own, Files.readString(desk.file("feedwitness.toml")));
    List<Problem> taken =
        Desk.wrong(GeneratedConfig.save(desk.files(), typed("drain", "Second bench")));
    assertEquals("name", taken.get(0).key());
    assertTrue(taken.get(0).message().contains("feedwitness.toml:6"), taken::toString);
  }

  @Test
  void leavesNoHalfWrittenFileBehind() throws IOException {
    GeneratedConfig.save(alone(), onBus("tank", 11));
    try (Stream<Path> files = Files.list(folder.resolve("data"))) {
      assertEquals(List.of(alone().generated()), files.toList());
    }
  }

  @Test
  void saysWhenItCannotWrite() throws IOException {
    Files.writeString(folder.resolve("data"), "a file where a folder should be");
    List<Problem> problems = Desk.wrong(GeneratedConfig.save(alone(), typed("drain", "Bench")));
    assertTrue(problems.get(0).message().startsWith("cannot be written"), problems::toString);
  }

  @Test
  void doesNotOverwriteAFileItCannotRead() throws IOException {
    Files.createDirectories(folder.resolve("data"));
    Files.writeString(alone().generated(), "[[point]]\nname = drain\n");
    assertFalse(Desk.wrong(GeneratedConfig.save(alone(), typed("tank", "Tank"))).isEmpty());
    assertEquals("[[point]]\nname = drain\n", Files.readString(alone().generated()));
  }
}
