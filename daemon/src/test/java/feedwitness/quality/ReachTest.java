package feedwitness.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
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
