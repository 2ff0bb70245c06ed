package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** {@code feedwitness replay} as a grower runs it. */
class ReplayCommandTest {
  private static final String HEADER = "time,conductivity_uS_cm,temperature_C\n";
  private static final Instant START = Instant.parse("2026-06-01T00:00:00Z");

  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int replay(String table, String... options) throws IOException {
    Path file = folder.resolve("in.csv");
    Files.writeString(file, table);
    return run(file.toString(), options);
  }

  private int run(String file, String... options) {
    CommandLine command = Main.commandLine();
    command.setOut(new PrintWriter(out, true));
    command.setErr(new PrintWriter(err, true));
    List<String> arguments = new ArrayList<>(List.of("replay", file));
    arguments.addAll(List.of(options));
    return command.execute(arguments.toArray(new String[0]));
  }

  private List<String> lines() {
    return out.toString().lines().toList();
  }

  /** A week of water at one minute that wanders as process water does, in steps of 3 µS/cm. */
  private static double[] water(long seed) {
    Random random = new Random(seed);
    double[] water = new double[7 * 1440];
    double wander = 0;
    for (int i = 0; i < water.length; i++) {
      wander = 0.995 * wander + 0.1 * 1.6 * random.nextGaussian();
      water[i] = 3 * Math.rint((210 + wander) / 3);
    }
    return water;
  }

  private static String table(double[] water) {
    StringBuilder text = new StringBuilder(HEADER);
    for (int i = 0; i < water.length; i++) {
      text.append(START.plusSeconds(60L * i)).append(',').append(water[i]).append(",6.5\n");
    }
    return text.toString();
  }

  @Test
  void findsStepsOfSevenAndAHalfPercentWithinTenMinutes() throws Exception {
    double[] water = water(1);
    List<Integer> begins = new ArrayList<>();
    for (int begin = 1500; begin < water.length - 30; begin += 613) {
      begins.add(begin);
      for (int i = begin; i < begin + 23; i++) {
        water[i] *= 0.925;
      }
    }
    assertEquals(0, replay(table(water), "--input-at-25"));
    List<String> found = lines().subList(1, lines().size());
    assertEquals("start,detected,size_percent,kind", lines().get(0));
    assertEquals(begins.size(), found.size(), found::toString);
    for (int i = 0; i < begins.size(); i++) {
      String[] cells = found.get(i).split(",", -1);
      Instant begin = START.plusSeconds(60L * begins.get(i));
      assertTrue(!Instant.parse(cells[1]).isAfter(begin.plusSeconds(600)), found.get(i));
      assertTrue(Math.abs(Instant.parse(cells[0]).compareTo(begin)) <= 1, found.get(i));
      assertEquals(-7.5, Double.parseDouble(cells[2]), 3);
      assertEquals("step", cells[3]);
    }
    assertTrue(err.toString().contains("10080 rows"), err.toString());
  }

  @Test
  void saysNothingOfWaterThatOnlyWanders() throws Exception {
    assertEquals(0, replay(table(water(2)), "--input-at-25"));
    assertEquals(1, lines().size(), lines()::toString);
  }

  @Test
  void oddRowsAndPlainRowsGiveTheSameAnswer() throws Exception {
    double[] water = water(3);
    for (int i = 3000; i < 3023; i++) {
      water[i] *= 0.925;
    }
    replay(table(water), "--input-at-25");
    String plain = out.toString();
    out.getBuffer().setLength(0);
    replay(table(water).replace("Z,", "+00:00,").replace(",6.5", ",6.50"), "--input-at-25");
    assertEquals(plain, out.toString());
    assertEquals(2, lines().size());
  }

  @Test
  void refersToTwentyFiveDegreesItself() throws Exception {
    StringBuilder text = new StringBuilder(HEADER);
    for (int i = 0; i < 3000; i++) {
      double celsius = 15 + 5 * Math.sin(i / 400.0);
      text.append(START.plusSeconds(60L * i)).append(',');
      text.append(Math.round(1500 * (1 + 0.0188 * (celsius - 25)))).append(',');
      text.append(Math.round(celsius * 10) / 10.0).append('\n');
    }
    assertEquals(0, replay(text.toString()));
    assertEquals(1, lines().size(), lines()::toString);
  }

  @Test
  void gapsBothZeroAndAClockThatStepsBackAreNoFindings() throws Exception {
    double[] water = water(4);
    StringBuilder text = new StringBuilder(HEADER);
    for (int i = 0; i < water.length; i++) {
      Instant time = START.plusSeconds(60L * i - (i > 6000 ? 86_400 : 0));
      String values = i % 997 < 20 ? "," : i > 4000 && i < 4030 ? "0,0" : water[i] + ",6.5";
      text.append(time).append(',').append(values).append('\n');
    }
    assertEquals(0, replay(text.toString(), "--input-at-25"));
    assertEquals(1, lines().size(), lines()::toString);
    out.getBuffer().setLength(0);
    replay(text.toString(), "--input-at-25", "--all");
    assertTrue(out.toString().contains(",evidence"), out.toString());
  }

  @Test
  void saysWhatItCannotRead() throws Exception {
    assertEquals(1, run(folder.resolve("none.csv").toString()));
    assertTrue(err.toString().contains("there is no such file"));
    assertEquals(2, replay("when,what\n1,2\n"));
    assertTrue(err.toString().contains("line 1 has no column time"));
    assertEquals(2, replay(HEADER + "2026-06-01T00:00:00Z,12x,20\n"));
    assertTrue(err.toString().contains("line 2"), err.toString());
    assertEquals(0, replay(HEADER));
  }
}
