package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Export, backup and restore as a grower meets them, with the service running and stopped. */
@Timeout(120)
class TakeAwayTest {
  private static final String POINTS =
      """
      [[point]]
      name = "drain"
      title = "Run-off"
      place = "drain"
      compensation = "linear"
      [[point]]
      name = "tank"
      title = "Tank"
      place = "tank"
      compensation = "linear"
      """;

  @TempDir Path folder;
  private String config = "";

  @BeforeEach
  void nameTheConfiguration() {
    config = folder.resolve("feedwitness.toml").toString();
  }

  private ServiceUnderTest start() throws Exception {
    return ServiceUnderTest.start(folder, POINTS);
  }

  private static void type(ServiceUnderTest service, String point, String conductivity)
      throws Exception {
    service.post(
        "/api/v1/points/" + point + "/readings",
        "{\"conductivity\": "
            + conductivity
            + ", \"unit\": \"µS/cm\", \"temperature\": 20, \"temperature_unit\": \"°C\","
            + " \"compensated\": \"not-at-all\"}",
        201);
  }

  /** What the restored backup held. */
  private Path configuration() throws Exception {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(
              file ->
                  file.endsWith("feedwitness.toml")
                      && file.toString().contains("configuration-from-backup-"))
          .findFirst()
          .orElseThrow();
    }
  }

  private List<String> lines(Path file) throws Exception {
    return Files.readString(file).lines().toList();
  }

  @Test
  void exportsTheSameWhetherTheServiceRunsOrNot() throws Exception {
    Path running = folder.resolve("running.csv");
    Path stopped = folder.resolve("stopped.csv");
    try (ServiceUnderTest service = start()) {
      type(service, "drain", "1850");
      type(service, "tank", "1413");
      Cli export = Cli.run("export", "--config", config, "-o", running.toString());
      assertEquals(0, export.code(), export.err());
      assertTrue(export.err().contains("2 readings written"), export.err());
    }
    assertEquals(0, Cli.run("export", "--config", config, "-o", stopped.toString()).code());
    assertEquals(Files.readString(running), Files.readString(stopped));
    List<String> lines = lines(running);
    assertEquals(3, lines.size());
    String[] drain = lines.get(1).split(",", -1);
    assertEquals("drain", drain[1]);
    assertEquals(1.85 / (1 - 0.0188 * 5), Double.parseDouble(drain[2]), 1e-5);
    assertEquals("1850", drain[4]);
    assertEquals("µS/cm", drain[5]);
    assertEquals("20", drain[6]);
    assertEquals("typed", drain[8]);
    assertEquals("1-1", drain[10]);
  }

  @Test
  void exportsForASpreadsheetThatWantsCommasInNumbers() throws Exception {
    Path file = folder.resolve("june.csv");
    try (ServiceUnderTest service = start()) {
      type(service, "drain", "1413.5");
      type(service, "tank", "1");
      Cli export =
          Cli.run(
              "export",
              "--config",
              config,
              "--separator",
              "semicolon",
              "--decimal",
              "comma",
              "--zone",
              "UTC",
              "--point",
              "drain",
              "-o",
              file.toString());
      assertEquals(0, export.code(), export.err());
    }
    String row = lines(file).get(1);
    assertTrue(row.contains(";1413,5;µS/cm;20;"), row);
    assertTrue(row.matches("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d\\.\\d{3}Z;drain;.*"), row);
    assertEquals(2, lines(file).size());
    Cli both = Cli.run("export", "--config", config, "--decimal", "comma");
    assertEquals(2, both.code());
    assertTrue(both.err().contains("cannot be told apart"), both.err());
  }

  @Test
  void saysWhatCannotBeExported() throws Exception {
    Cli nothing = Cli.run("export", "--data", folder.resolve("elsewhere").toString());
    assertEquals(1, nothing.code());
    assertTrue(nothing.err().contains("--config"), nothing.err());
    try (ServiceUnderTest service = start()) {
      type(service, "drain", "1850");
      Cli pond = Cli.run("export", "--config", config, "--point", "pond");
      assertEquals(1, pond.code());
      assertTrue(pond.err().contains("there are: drain, tank"), pond.err());
      Path there = Files.writeString(folder.resolve("there.csv"), "mine");
      Cli again = Cli.run("export", "--config", config, "-o", there.toString());
      assertEquals(1, again.code());
      assertTrue(again.err().contains("left as it is"), again.err());
      assertEquals("mine", Files.readString(there));
    }
    Cli deaf = Cli.run("export", "--url", "http://127.0.0.1:1/");
    assertEquals(1, deaf.code());
    assertTrue(deaf.err().contains("nothing answers at http://127.0.0.1:1/"), deaf.err());
  }

  @Test
  void backsUpARunningServiceAndBringsTheReadingsBack() throws Exception {
    Path backup = folder.resolve("readings.zip");
    try (ServiceUnderTest service = start()) {
      type(service, "drain", "1111");
      Cli made = Cli.run("backup", "--config", config, backup.toString());
      assertEquals(0, made.code(), made.err());
      type(service, "drain", "2222");
      Cli running = Cli.run("restore", "--config", config, backup.toString());
      assertEquals(1, running.code());
      assertTrue(running.err().contains("stop it first"), running.err());
      Cli check = Cli.run("restore", "--check-only", backup.toString());
      assertEquals(0, check.code(), check.err());
      assertTrue(check.out().contains("1 readings of drain"), check.out());
    }
    Cli restored = Cli.run("restore", "--config", config, backup.toString());
    assertEquals(0, restored.code(), restored.err());
    assertTrue(restored.out().contains("history-replaced-"), restored.out());
    assertTrue(restored.out().contains("compare it with yours"), restored.out());
    assertEquals(
        Files.readString(folder.resolve("feedwitness.toml")), Files.readString(configuration()));
    try (ServiceUnderTest service = start()) {
      Path after = folder.resolve("after.csv");
      assertEquals(0, Cli.run("export", "--config", config, "-o", after.toString()).code());
      assertEquals(2, lines(after).size());
      assertTrue(lines(after).get(1).contains(",1111,"), lines(after).get(1));
      assertTrue(service.get("/health").path("boot").asInt() > 1, "starts are counted on");
    }
    try (Stream<Path> files = Files.list(folder.resolve("feedwitness-data"))) {
      List<String> names = files.map(file -> file.getFileName().toString()).sorted().toList();
      assertEquals(4, names.size(), names::toString);
      assertTrue(names.get(1).startsWith("history-replaced-"), names::toString);
    }
  }

  @Test
  void backsUpAndRestoresIntoAnEmptyPlaceWithTheServiceStopped() throws Exception {
    try (ServiceUnderTest service = start()) {
      type(service, "drain", "1111");
    }
    Path backup = folder.resolve("readings.zip");
    Cli made = Cli.run("backup", "--config", config, backup.toString());
    assertEquals(0, made.code(), made.err());
    String elsewhere = folder.resolve("new-machine").toString();
    Cli restored = Cli.run("restore", "--data", elsewhere, backup.toString());
    assertEquals(0, restored.code(), restored.err());
    assertFalse(restored.out().contains("is kept as"), restored.out());
    Path csv = folder.resolve("new.csv");
    assertEquals(0, Cli.run("export", "--data", elsewhere, "-o", csv.toString()).code());
    assertEquals(2, lines(csv).size());
  }

  @Test
  void refusesHalfABackupAndLeavesTheReadingsAlone() throws Exception {
    try (ServiceUnderTest service = start()) {
      type(service, "drain", "1111");
    }
    Path backup = folder.resolve("readings.zip");
    assertEquals(0, Cli.run("backup", "--config", config, backup.toString()).code());
    Path history = folder.resolve("feedwitness-data/history.mv.db");
    byte[] before = Files.readAllBytes(history);
    try (RandomAccessFile file = new RandomAccessFile(backup.toFile(), "rw")) {
      file.setLength(file.length() / 2);
    }
    Cli half = Cli.run("restore", "--config", config, backup.toString());
    assertEquals(1, half.code());
    assertTrue(half.err().contains("is no whole backup"), half.err());
    Cli gone = Cli.run("restore", "--config", config, folder.resolve("no.zip").toString());
    assertEquals(1, gone.code());
    assertTrue(gone.err().contains("cannot be read"), gone.err());
    Path other = folder.resolve("photos.zip");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(other))) {
      zip.putNextEntry(new ZipEntry("../../hellebore.jpg"));
      zip.write(new byte[10]);
    }
    Cli photos = Cli.run("restore", "--config", config, other.toString());
    assertEquals(1, photos.code());
    assertTrue(photos.err().contains("no backup of Feedwitness"), photos.err());
    assertEquals(List.of(before.length), List.of(Files.readAllBytes(history).length));
    assertFalse(Files.exists(folder.resolve("feedwitness-data/restoring")));
  }
}
