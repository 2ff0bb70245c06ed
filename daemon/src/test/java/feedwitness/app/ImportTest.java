package feedwitness.app;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Tables as loggers and spreadsheets write them, brought into the history of Quarry End. */
@Timeout(120)
class ImportTest {
  private static final String POINTS =
      """
      [[point]]
      name = "bench"
      title = "Reference bench"
      place = "other"
      compensation = "linear"
      percent-per-kelvin = 1.88
      """;

  @TempDir Path folder;
  private String config = "";

  @BeforeEach
  void writeTheConfiguration() throws Exception {
    config =
        Files.writeString(
                folder.resolve("feedwitness.toml"),
                "[nursery]\nname = \"Quarry End Nursery\"\nzone = \"Europe/London\"\n" + POINTS)
            .toString();
  }

  private ServiceUnderTest start() throws Exception {
    return ServiceUnderTest.start(folder, POINTS);
  }

  private Path table(Charset charset, String... lines) throws Exception {
    return Files.write(
        folder.resolve("table.csv"), (String.join("\n", lines) + "\n").getBytes(charset));
  }

  private Cli imported(Path table, String... more) {
    List<String> words =
        new ArrayList<>(
            List.of("import", "--config", config, "--point", "bench", table.toString()));
    words.addAll(List.of(more));
    return Cli.run(words.toArray(new String[0]));
  }

  /** What the history then has: the lines of an export less its heading, each cut into fields. */
  private List<String[]> history() throws Exception {
    Path csv = Files.createTempFile(folder, "after", ".csv");
    Files.delete(csv);
    Cli export = Cli.run("export", "--config", config, "--zone", "UTC", "-o", csv.toString());
    assertEquals(0, export.code(), export.err());
    return Files.readString(csv).lines().skip(1).map(line -> line.split(",", -1)).toList();
  }

  @Test
  void takesATableIntoARunningServiceWithoutTouchingWhatIsLatest() throws Exception {
    Path table =
        table(
            UTF_8,
            "Time,EC (µS/cm),Temp (°C)",
            "2025-06-01T08:00:00Z,1850,20",
            "2025-06-01T08:00:20Z,1860,20",
            "2025-06-01T08:00:40Z,,20");
    try (ServiceUnderTest service = start()) {
      service.post(
          "/api/v1/points/bench/readings",
          "{\"conductivity\": 1.2, \"unit\": \"mS/cm\", \"temperature\": 25,"
              + " \"temperature_unit\": \"°C\", \"compensated\": \"not-at-all\"}",
          201);
      Cli first = imported(table, "--compensated", "no");
      assertEquals(0, first.code(), first.out() + first.err());
      assertTrue(first.out().contains("2 readings imported for bench, safe on disk"), first.out());
      Cli again = imported(table, "--compensated", "no");
      assertTrue(again.out().contains("0 readings imported"), again.out());
      assertTrue(again.out().contains("2 were there already"), again.out());
      JsonNode point = service.get("/api/v1/points/bench");
      assertEquals(1.2, point.path("conductivity_mS_cm").asDouble());
      assertEquals("typed", point.path("origin").asText());
      JsonNode course =
          service.get(
              "/api/v1/points/bench/measurements?from=2025-06-01T00:00:00Z&to=2025-06-02T00:00:00Z");
      assertEquals(2, course.path("measurements").size());
    }
    try (ServiceUnderTest service = start()) {
      JsonNode point = service.get("/api/v1/points/bench");
      assertEquals("typed", point.path("origin").asText(), "also after a restart");
    }
    List<String[]> rows = history();
    assertEquals(3, rows.size());
    assertEquals("imported", rows.get(1)[8]);
    assertEquals("2025-06-01T08:00:00.000Z", rows.get(1)[0]);
    assertEquals(1.85 / (1 - 0.0188 * 5), Double.parseDouble(rows.get(1)[2]), 1e-5);
  }

  @Test
  void readsASpreadsheetOfTheContinentIntoAStoppedService() throws Exception {
    Path table =
        table(
            ISO_8859_1,
            "Datum;Zeit;Leitfähigkeit (µS/cm);Temp. °C",
            "25.10.2025;14:05;1.413,5;21,5",
            "25.10.2025;14:06;985,0;21,4");
    Cli cli = imported(table, "--compensated", "no", "--zone", "Europe/Berlin");
    assertEquals(0, cli.code(), cli.out() + cli.err());
    assertTrue(cli.out().contains("decimal comma"), cli.out());
    assertTrue(cli.out().contains("day first"), cli.out());
    List<String[]> rows = history();
    assertEquals("2025-10-25T12:05:00.000Z", rows.get(0)[0]);
    assertEquals("1413.5", rows.get(0)[4]);
    assertEquals("21.5", rows.get(0)[6]);
    assertEquals("985", rows.get(1)[4]);
  }

  @Test
  void readsTwelveHourClocksThousandsAndFahrenheit() throws Exception {
    Path table =
        table(
            UTF_8,
            "Date Time\tConductivity uS/cm\tTemperature (F)",
            "6/13/2025 12:30:00 AM\t\"1,413.5\"\t77",
            "6/13/2025 12:30:00 PM\t2,770\t77",
            "6/13/2025 1:05 pm\t985\t77");
    Cli cli = imported(table, "--compensated", "no", "--zone", "UTC");
    assertEquals(0, cli.code(), cli.out() + cli.err());
    List<String[]> rows = history();
    assertEquals("2025-06-13T00:30:00.000Z", rows.get(0)[0]);
    assertEquals("2025-06-13T12:30:00.000Z", rows.get(1)[0]);
    assertEquals("2025-06-13T13:05:00.000Z", rows.get(2)[0]);
    assertEquals("1413.5", rows.get(0)[4]);
    assertEquals("2770", rows.get(1)[4]);
    assertEquals("25", rows.get(0)[6]);
  }

  @Test
  void asksWhatTheTableCannotTell() throws Exception {
    Path table = table(UTF_8, "date;ec;temperature", "03/04/2025 08:00;1,413;20");
    Cli cli = imported(table);
    assertEquals(2, cli.code());
    assertTrue(cli.err().contains("--unit"), cli.err());
    assertTrue(cli.err().contains("--temperature-unit"), cli.err());
    assertTrue(cli.err().contains("--dates"), cli.err());
    assertTrue(cli.err().contains("--decimal"), cli.err());
    assertTrue(cli.err().contains("--compensated"), cli.err());
    Cli answered =
        imported(
            table,
            "--unit",
            "mS/cm",
            "--temperature-unit",
            "C",
            "--dates",
            "day-first",
            "--decimal",
            "comma",
            "--compensated",
            "no",
            "--zone",
            "UTC");
    assertEquals(0, answered.code(), answered.out() + answered.err());
    assertEquals("2025-04-03T08:00:00.000Z", history().get(0)[0]);
    assertEquals("1.413", history().get(0)[4]);
  }

  @Test
  void leavesStretchesOfAClockThatWasNeverSetOutUnlessToldWhenTheyBegan() throws Exception {
    Path table = folder.resolve("probe.csv");
    try (InputStream in =
        ImportTest.class.getResourceAsStream("/recordings/bench_logger_excerpt.csv")) {
      assertTrue(in != null, "the excerpt is missing");
      Files.copy(in, table);
    }
    Cli dry = imported(table, "--compensated", "no", "--dry-run");
    assertEquals(3, dry.code(), dry.err());
    assertTrue(dry.out().contains("'Cond_uScm-1', in µS/cm"), dry.out());
    assertTrue(dry.out().contains("'Temp_C', in °C"), dry.out());
    assertTrue(dry.out().contains("4 repeated headings"), dry.out());
    assertTrue(dry.out().contains("--assume-start 4="), dry.out());
    assertTrue(dry.out().contains("0 readings for bench"), dry.out());
    Cli cli = imported(table, "--compensated", "no", "--assume-start", "4=2025-06-01T08:00:00Z");
    assertEquals(3, cli.code(), cli.err());
    List<String[]> rows = history();
    assertEquals(311, rows.size());
    assertEquals("2025-06-01T08:00:00.000Z", rows.get(0)[0]);
  }

  @Test
  void keepsTheOrderOfTheFileWhenAClockWasSetBack() throws Exception {
    Path table =
        table(
            UTF_8,
            "time,ec_mS_cm",
            "2025-06-01T08:00:00Z,1.1",
            "2025-06-01T08:10:00Z,1.2",
            "2025-06-01T08:05:00Z,1.3",
            "2025-06-01T08:15:00Z,1.4");
    Cli cli = imported(table, "--compensated", "yes");
    assertEquals(0, cli.code(), cli.out() + cli.err());
    assertTrue(cli.out().contains("falls into stretches"), cli.out());
    assertEquals(
        List.of("1.1", "1.2", "1.3", "1.4"), history().stream().map(row -> row[4]).toList());
  }

  @Test
  void tellsTheHourThatComesTwiceInAutumnApart() throws Exception {
    Path table =
        table(
            UTF_8,
            "time,ec_mS_cm",
            "2025-10-26 01:30,1.1",
            "2025-10-26 01:50,1.2",
            "2025-10-26 01:10,1.3",
            "2025-10-26 02:10,1.4",
            "2026-03-29 01:30,1.5");
    Cli cli = imported(table, "--compensated", "yes");
    assertEquals(3, cli.code(), cli.out() + cli.err());
    assertTrue(cli.out().contains("daylight saving"), cli.out());
    assertEquals(
        List.of(
            "2025-10-26T00:30:00.000Z",
            "2025-10-26T00:50:00.000Z",
            "2025-10-26T01:10:00.000Z",
            "2025-10-26T02:10:00.000Z"),
        history().stream().map(row -> row[0]).toList());
  }

  @Test
  void takesItsOwnExportBackAndFindsEveryReading() throws Exception {
    Path table = table(UTF_8, "time,ec_uS_cm,temp_C", "2025-06-01T08:00:00.25Z,1413.7,19.95");
    assertEquals(0, imported(table, "--compensated", "no").code());
    Path csv = folder.resolve("export.csv");
    assertEquals(0, Cli.run("export", "--config", config, "-o", csv.toString()).code());
    Cli back = imported(csv, "--compensated", "no");
    assertEquals(0, back.code(), back.out() + back.err());
    assertTrue(back.out().contains("1 were there already"), back.out());
  }

  @Test
  void findsRowsWhoseSingleReadingsWereLetGoOf() throws Exception {
    String[] first = {
      "Time,EC (µS/cm),Temp (°C)", "2025-06-01T08:00:00Z,1850,20", "2025-06-01T08:00:20Z,1860,20"
    };
    assertEquals(0, imported(table(UTF_8, first), "--compensated", "no").code());
    Cli sealing = imported(table(UTF_8, first), "--compensated", "no");
    assertTrue(sealing.out().contains("2 were there already"), sealing.out());
    letGoOfSingleReadings();
    Cli again =
        imported(
            table(UTF_8, first[0], first[1], first[2], "2025-06-01T08:01:00Z,1870,20"),
            "--compensated",
            "no");
    assertTrue(again.out().contains("1 readings imported"), again.out());
    assertTrue(again.out().contains("2 were left out because only roll-ups"), again.out());
    assertEquals(3, again.code(), "not all of it was taken");
  }

  /** As retention does when their time is up. */
  private void letGoOfSingleReadings() throws Exception {
    try (Stream<Path> files = Files.walk(folder)) {
      String file =
          files.map(Path::toString).filter(f -> f.endsWith("history.mv.db")).findFirst().get();
      try (Connection connection =
              DriverManager.getConnection(
                  "jdbc:h2:ordered:" + file.replace(".mv.db", ""), "sa", "");
          Statement statement = connection.createStatement()) {
        assertEquals(1, statement.executeUpdate("delete from chunk"));
      }
    }
  }

  @Test
  void aMillionBrokenRowsMakeAShortMessage() throws Exception {
    Path table = folder.resolve("broken.csv");
    try (var out = Files.newBufferedWriter(table)) {
      out.write("time,ec_mS_cm,temp_C\n");
      for (int i = 0; i < 1_000_000; i++) {
        out.write(i % 3 == 0 ? "#####\n" : i % 3 == 1 ? "yesterday,1.5,20\n" : "946,\"x,y\n");
      }
      out.write("2025-06-01T08:00:00Z,1.5,20\n2999-06-01T08:00:00Z,1.5,20\n");
    }
    Process process =
        Cli.ownProcess(
                "-Xmx32m",
                List.of(
                    "import",
                    "--config",
                    config,
                    "--point",
                    "bench",
                    "--compensated",
                    "no",
                    table.toString()))
            .start();
    String said;
    try (InputStream in = process.getInputStream()) {
      said = new String(in.readAllBytes(), UTF_8);
    }
    assertEquals(3, process.waitFor(), said);
    assertTrue(said.length() < 4_000, said);
    assertTrue(said.contains("333333 rows: time: no time"), said);
    assertTrue(said.contains("line 3: 'yesterday'"), said);
    assertTrue(said.contains("1 row: time: in the future"), said);
    assertTrue(said.contains("1 readings imported"), said);
    assertEquals(1, history().size());
  }

  @Test
  void saysWhyAFileCannotBeATable() throws Exception {
    Cli empty = imported(table(UTF_8, ""), "--compensated", "no");
    assertEquals(2, empty.code());
    assertTrue(empty.err().contains("is empty"), empty.err());
    Cli poem = imported(table(UTF_8, "Roses are red", "hellebores are green"));
    assertEquals(2, poem.code());
    assertTrue(poem.err().contains("--conductivity"), poem.err());
    Path sheet = Files.write(folder.resolve("sheet.xlsx"), new byte[] {'P', 'K', 3, 4, 0});
    assertTrue(imported(sheet).err().contains("save it as CSV"), imported(sheet).err());
    Path good = table(UTF_8, "time,ec_mS_cm", "2025-06-01T08:00:00Z,1.5");
    Cli pond = Cli.run("import", "--config", config, "--point", "pond", good.toString());
    assertEquals(2, pond.code());
    assertTrue(pond.err().contains("there are: bench"), pond.err());
    assertFalse(pond.err().contains("Exception"), pond.err());
  }
}
