package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** {@code feedwitness examine} as a grower runs it. */
class ExamineCommandTest {
  private static final String HEADER = "time,conductivity_uS_cm,temperature_C";
  private static final String ADDED = ",conductivity25_mS_cm,uncertainty_mS_cm,flags";

  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int examine(String table, String... options) throws IOException {
    Path file = folder.resolve("in.csv");
    Files.writeString(file, table);
    return run(file.toString(), options);
  }

  private int run(String file, String... options) {
    CommandLine command = Main.commandLine();
    command.setOut(new PrintWriter(out, true));
    command.setErr(new PrintWriter(err, true));
    String[] arguments = new String[options.length + 2];
    arguments[0] = "examine";
    arguments[1] = file;
    System.arraycopy(options, 0, arguments, 2, options.length);
    return command.execute(arguments);
  }

  private List<String> lines() {
    return out.toString().lines().toList();
  }

  private static String table(int rows) {
    StringBuilder text = new StringBuilder(HEADER).append('\n');
    for (int i = 0; i < rows; i++) {
      text.append(
          "2026-06-02T%02d:%02d:00Z,%d,25.0%d\n"
              .formatted(i / 60, i % 60, 1800 + (i * 7) % 5, i % 3));
    }
    return text.toString();
  }

  @Test
  void refersToTwentyFiveDegreesRowForRow() throws Exception {
    int code = examine(HEADER + "\n2026-06-02T06:00:00Z,1524,15\n2026-06-02T06:01:00Z,,15\n");
    assertEquals(0, code, err::toString);
    assertEquals(HEADER + ADDED, lines().get(0));
    String[] first = lines().get(1).split(",", -1);
    assertEquals(1.524 / (1 - 0.0188 * 10), Double.parseDouble(first[3]), 1e-5);
    double u = Double.parseDouble(first[4]);
    assertTrue(u > 0.02 && u < 0.04, first[4]);
    assertEquals("unknown", first[5]);
    assertEquals("2026-06-02T06:01:00Z,,15,,,conductivity-missing", lines().get(2));
    assertEquals(3, lines().size());
  }

  @Test
  void leavesWhatIsAt25AlreadyAsItIs() throws Exception {
    assertEquals(0, examine(HEADER + "\n2026-06-02T06:00:00Z,1524,15\n", "--input-at-25"));
    assertEquals("1.524", lines().get(1).split(",", -1)[3]);
  }

  @Test
  void keepsOtherColumnsAsTheyStand() throws Exception {
    examine(
        """
        bench,time,note,temperature_C,conductivity_uS_cm
        2,2026-06-02T06:00:00Z,"feed, strong",25,1800
        """);
    assertTrue(out.toString().contains("2,2026-06-02T06:00:00Z,\"feed, strong"), out::toString);
  }

  @Test
  void keepsEveryOctetOfOtherColumnsInAFile() throws Exception {
    Path target = folder.resolve("out.csv");
    String row = "2026-06-02T06:00:00Z,1800,25,übervoll";
    assertEquals(0, examine(HEADER + ",note\n" + row + "\n", "-o", target.toString()));
    assertTrue(Files.readString(target, StandardCharsets.UTF_8).contains(row));
    assertEquals("", out.toString());
    assertEquals(2, Files.readAllLines(target).size());
    assertFalse(Files.exists(folder.resolve("out.csv.part")));
  }

  @Test
  void flagsARowByWhatFollowsIt() throws Exception {
    String table =
        table(200)
            .replace("2026-06-02T02:00:00Z,1800", "2026-06-02T02:00:00Z,2500")
            .replace("2026-06-02T02:30:00Z,1800", "2026-06-02T02:30:00Z,0");
    assertEquals(0, examine(table, "--input-at-25"), err::toString);
    assertEquals(201, lines().size());
    assertTrue(lines().get(121).endsWith(",unknown|spike"), lines().get(121));
    assertTrue(lines().get(151).endsWith("in-air|spike"), lines().get(151));
    assertTrue(err.toString().contains("200 rows from 2026-06-02T00:00:00Z"), err::toString);
    assertTrue(err.toString().contains("in-air"), err::toString);
    assertTrue(err.toString().contains("0.50 %"), err::toString);
  }

  @Test
  void flagsAStuckNumberFromItsFirstRowOn() throws Exception {
    StringBuilder text = new StringBuilder(table(300));
    for (int i = 300; i < 400; i++) {
      text.append("2026-06-02T%02d:%02d:00Z,1802,25.0%d\n".formatted(i / 60, i % 60, i % 3));
    }
    assertEquals(0, examine(text.toString(), "--input-at-25"), err::toString);
    assertFalse(lines().get(300).contains("stuck"), lines().get(300));
    assertTrue(lines().get(302).endsWith(",stuck"), lines().get(302));
    assertTrue(lines().get(400).endsWith(",stuck"), lines().get(400));
    assertTrue(err.toString().contains("became known only by what came later"), err::toString);
  }

  @Test
  void readsThroughAPipe() throws Exception {
    Path pipe = folder.resolve("readings");
    assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
    Thread writer = new Thread(() -> fill(pipe, table(20)));
    writer.start();
    assertEquals(0, run(pipe.toString(), "--input-at-25"), err::toString);
    writer.join();
    assertEquals(21, lines().size());
  }

  private static void fill(Path pipe, String text) {
    try {
      Files.writeString(pipe, text, StandardOpenOption.WRITE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void saysWhichCellIsNoNumberAndWhatToDo() throws Exception {
    assertEquals(
        2, examine(HEADER + "\n2026-06-02T06:00:00Z,1.8e3,25\n2026-06-02T06:01:00Z,wet,25\n"));
    assertTrue(
        err.toString().contains("line 3: conductivity_uS_cm 'wet' is no number"), err::toString);
    assertTrue(err.toString().contains("leave the cell empty"), err::toString);
  }

  @Test
  void saysWhichColumnIsMissing() throws Exception {
    assertEquals(2, examine("time,ec,temperature_C\n2026-06-02T06:00:00Z,1800,25\n"));
    assertTrue(err.toString().contains("no column conductivity_uS_cm"), err::toString);
  }

  @Test
  void saysWhichTimeIsNone() throws Exception {
    assertEquals(2, examine(HEADER + "\n2nd of June,1800,25\n"));
    assertTrue(err.toString().contains("line 2: time '2nd of June'"), err::toString);
  }

  @Test
  void saysWhichRowIsShort() throws Exception {
    assertEquals(2, examine(HEADER + "\n2026-06-02T06:00:00Z,1800\n"));
    assertTrue(err.toString().contains("line 2 has 2 cells where line 1 has 3"), err::toString);
  }

  @Test
  void leavesTheOldOutputWhenTheTableIsUnfit() throws Exception {
    Path target = folder.resolve("out.csv");
    Files.writeString(target, "old");
    assertEquals(2, examine(HEADER + "\nnever,1800,25\n", "-o", target.toString()));
    assertEquals("old", Files.readString(target));
  }

  @Test
  void saysThatAFileIsNotThere() {
    assertEquals(1, run(folder.resolve("none.csv").toString()));
    assertTrue(err.toString().contains("there is no such file"), err::toString);
  }

  @Test
  void saysThatItCannotWriteThere() throws Exception {
    Path target = folder.resolve("nowhere").resolve("out.csv");
    assertEquals(1, examine(table(2), "-o", target.toString()));
    assertTrue(err.toString().contains("nowhere"), err::toString);
  }

  @Test
  void refusesARatedRangeUpsideDown() throws Exception {
    assertEquals(2, examine(table(2), "--rated", "20,0"));
    assertTrue(err.toString().contains("--rated must be two numbers"), err::toString);
  }

  @Test
  void flagsWhatIsOutsideTheRatedRange() throws Exception {
    assertEquals(0, examine(table(20), "--rated", "0,1.5", "--input-at-25"));
    assertTrue(lines().get(20).endsWith(",outside-rated-range"), lines().get(20));
  }

  @Test
  void calledUndatedWithoutATime() throws Exception {
    assertEquals(0, examine(HEADER + "\n,1800,25\n"));
    assertTrue(lines().get(1).endsWith("unknown|undated"), lines().get(1));
  }

  @Test
  void takesTimesWithoutAZoneForUtcAndSaysSo() throws Exception {
    assertEquals(0, examine(HEADER + "\n2026-06-02 06:00,1800,25\n2026-06-02 05:00,1800,25\n"));
    assertTrue(err.toString().contains("taken for UTC"), err::toString);
    assertTrue(err.toString().contains("The clock steps back 1 times"), err::toString);
  }
}
