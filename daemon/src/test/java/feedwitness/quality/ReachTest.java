package feedwitness.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Guards the figures of docs/quality.md on excerpts of the public recordings. */
class ReachTest {
  private static final Path FOLDER = Path.of("src/test/resources/recordings");

  @Test
  void seesWhatTechniciansSawInStreamsAndLittleElse() throws IOException {
    StreamScore all = new StreamScore(0, 0, 0, 0, 0, 0);
    for (String name : List.of("franklin_basin", "main_street", "tony_grove")) {
      Path file = FOLDER.resolve("stream_" + name + "_excerpt.csv");
      all = all.plus(StreamScore.of(file, Recording.stream(file).judge()));
    }
    StreamScore score = all;
    assertEquals(522, score.seen(), "visible faulty rows");
    assertTrue(score.recall() >= 0.95, score::toString);
    assertTrue(score.precision() >= 0.95, score::toString);
    assertTrue(score.falseEpisodesIn30Days() <= 1, score::toString);
  }

  @Test
  void seesAProbeDieWithinTwoReadings() throws IOException {
    for (String name : List.of("a", "b")) {
      Recording probe =
          Recording.benchProbe(FOLDER.resolve("bench_probe_" + name + "_excerpt.csv"));
      int dead = QualityBenchmark.firstDead(probe);
      assertTrue(dead > 0 && dead < probe.rows().size(), "the excerpt shows the death");
      int flagged = QualityBenchmark.firstFlaggedDead(probe);
      assertTrue(flagged >= dead && flagged <= dead + 1, name + ": " + flagged);
    }
  }

  @Test
  void findsInjectedFaultsOfEveryKind() throws IOException {
    Recording bench = Recording.benchReference(FOLDER.resolve("bench_steady_excerpt.csv"));
    FaultScore score = null;
    for (long seed = 11; seed <= 15; seed++) {
      FaultScore one = FaultScore.of(InjectedFaults.into(bench, seed, 300, 60, 60, 12));
      score = score == null ? one : score.plus(one);
    }
    FaultScore sum = java.util.Objects.requireNonNull(score);
    FaultScore.Tally all = sum.all();
    assertEquals(60, all.events(), "injected events");
    assertEquals(InjectedFaults.Kind.values().length, sum.kinds().size(), "kinds of fault");
    assertTrue(all.found() >= 57, sum::toString);
    assertTrue(all.hit() >= 0.95 * all.rows(), sum::toString);
    assertTrue(sum.precision() >= 0.95, sum::toString);
  }

  /**
   * Process water as a coarse instrument shows it: steps of 1 %, constant for hours in health, and
   * a temperature in steps of 0.1 K. An instrument that hangs for a day is told by the habits of
   * this one, and all its rows are qualified.
   */
  @Test
  void findsInjectedFaultsInCoarseProcessWater() {
    FaultScore sum = new FaultScore(0, 0, Map.of());
    for (long seed = 21; seed <= 23; seed++) {
      sum = sum.plus(FaultScore.of(InjectedFaults.into(coarse(seed), seed, 9000, 300, 1440, 24)));
    }
    FaultScore score = sum;
    FaultScore.Tally all = sum.all();
    assertEquals(72, all.events(), "injected events");
    assertEquals(12, all.events() - sum.but(InjectedFaults.Kind.STUCK).events(), "of these stuck");
    assertTrue(all.found() >= 69, score::toString);
    assertTrue(all.hit() >= 0.95 * all.rows(), score::toString);
    assertTrue(sum.precision() >= 0.95, score::toString);
  }

  private static Recording coarse(long seed) {
    Random random = new Random(seed);
    List<Recording.Row> rows = new ArrayList<>();
    double kappa = 210;
    double celsius = 7.5;
    for (int i = 0; i < 32_000; i++) {
      kappa += 0.05 * random.nextGaussian() - 0.0005 * (kappa - 210);
      celsius += 0.01 * random.nextGaussian() - 0.0005 * (celsius - 7.5);
      rows.add(
          new Recording.Row(
              60.0 * i, 0.002 * Math.round(kappa / 2), Math.round(10 * celsius) / 10.0));
    }
    return new Recording("coarse", true, rows);
  }

  @Test
  void saysNothingOfASoundProbeInASteadyBath() throws IOException {
    Recording bench = Recording.benchReference(FOLDER.resolve("bench_steady_excerpt.csv"));
    List<Flags> flags = bench.judge();
    long unknown = flags.stream().filter(f -> f.has(QualityFlag.UNKNOWN)).count();
    assertTrue(unknown >= 8 && unknown <= 12, "unknown at the start: " + unknown);
    assertTrue(
        flags.stream().allMatch(f -> f.isEmpty() || f.equals(Flags.of(QualityFlag.UNKNOWN))));
  }
}
