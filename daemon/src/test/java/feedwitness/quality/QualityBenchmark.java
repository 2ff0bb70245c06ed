package feedwitness.quality;

import feedwitness.quality.Recording.Row;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * Makes every figure of {@code docs/quality.md} again, given the folder of the recordings. No
 * timings, so it says the same on every machine.
 */
final class QualityBenchmark {
  private static final List<String> STREAMS =
      List.of("FranklinBasin2014", "MainStreet2019", "TonyGrove2019");
  private static final int SEEDS = 6;

  private final Path folder;
  private final PrintStream out;

  private QualityBenchmark(Path folder, PrintStream out) {
    this.folder = folder;
    this.out = out;
  }

  public static void main(String[] arguments) throws IOException {
    if (arguments.length != 1 || !Files.isDirectory(Path.of(arguments[0]))) {
      throw new IllegalArgumentException("name the folder of the recordings");
    }
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    new QualityBenchmark(Path.of(arguments[0]), out).run();
  }

  private void run() throws IOException {
    streams();
    deadProbe("bench_probe_a_20s.csv");
    deadProbe("bench_probe_b_20s.csv");
    Recording bench = Recording.benchReference(folder.resolve("bench_reference_10s.csv"));
    quiet(bench);
    injected(bench, 1200, 120, 90);
    Recording plant = Recording.plantWater(folder.resolve("plant_water_1min.csv"));
    quiet(plant);
    injected(plant, 12_000, 400, 1440);
  }

  private void streams() throws IOException {
    StreamScore all = new StreamScore(0, 0, 0, 0, 0, 0);
    for (String name : STREAMS) {
      Path file = folder.resolve("stream_" + name + ".csv");
      StreamScore score = StreamScore.of(file, Recording.stream(file).judge());
      print(name, score);
      all = all.plus(score);
    }
    print("pooled", all);
    variant("backwards", QualityBenchmark::backwards);
    variant("every second", QualityBenchmark::everySecond);
  }

  /** The same series, changed into ones on which no parameter was ever looked at. */
  private void variant(String name, UnaryOperator<List<String>> change) throws IOException {
    StreamScore all = new StreamScore(0, 0, 0, 0, 0, 0);
    Path file = Files.createTempFile("stream", ".csv");
    try {
      for (String stream : STREAMS) {
        List<String> lines = Files.readAllLines(folder.resolve("stream_" + stream + ".csv"));
        List<String> changed = new ArrayList<>(lines.subList(0, 1));
        changed.addAll(change.apply(lines.subList(1, lines.size())));
        Files.write(file, changed);
        all = all.plus(StreamScore.of(file, Recording.stream(file).judge()));
      }
    } finally {
      Files.delete(file);
    }
    print(name, all);
  }

  /** Times stay where they are. */
  private static List<String> backwards(List<String> rows) {
    List<String> changed = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      String other = rows.get(rows.size() - 1 - i);
      String time = rows.get(i).substring(0, rows.get(i).indexOf(','));
      changed.add(time + other.substring(other.indexOf(',')));
    }
    return changed;
  }

  private static List<String> everySecond(List<String> rows) {
    List<String> changed = new ArrayList<>();
    for (int i = 0; i < rows.size(); i += 2) {
      changed.add(rows.get(i));
    }
    return changed;
  }

  private void print(String name, StreamScore score) {
    out.printf(
        Locale.ROOT,
        "stream %-18s visible rows %4d  recall %.3f  precision %.3f  false episodes in 30 days"
            + " %.2f%n",
        name,
        score.seen(),
        score.recall(),
        score.precision(),
        score.falseEpisodesIn30Days());
  }

  private void deadProbe(String name) throws IOException {
    Recording probe = Recording.benchProbe(folder.resolve(name));
    out.printf(
        "%s dies at row %d, flagged at row %d%n", name, firstDead(probe), firstFlaggedDead(probe));
  }

  /** Where the probe's temperature and conductivity become 0 for good. */
  static int firstDead(Recording probe) {
    int at = probe.rows().size();
    while (at > 0) {
      Row row = probe.rows().get(at - 1);
      if (row.milliSiemensPerCm() != 0 || row.celsius() != 0) {
        break;
      }
      at--;
    }
    return at;
  }

  /** First row from death on that is flagged; −1 if none. */
  static int firstFlaggedDead(Recording probe) {
    List<Flags> flags = probe.judge();
    for (int i = firstDead(probe); i < flags.size(); i++) {
      if (flags.get(i).has(QualityFlag.BOTH_ZERO)) {
        return i;
      }
    }
    return -1;
  }

  private void quiet(Recording background) {
    List<Flags> flags = background.judge();
    int raised = 0;
    for (int i = 0; i < flags.size(); i++) {
      boolean verdict = flags.get(i).list().stream().anyMatch(f -> f != QualityFlag.UNKNOWN);
      raised += verdict && !InjectedFaults.brokenAlready(background.rows().get(i)) ? 1 : 0;
    }
    out.printf("%s untouched: %d of %d rows flagged%n", background.name(), raised, flags.size());
  }

  private void injected(Recording background, int from, int gap, int stuckRows) {
    FaultScore sum = new FaultScore(0, 0, Map.of());
    int soon = 0;
    for (long seed = 1; seed <= SEEDS; seed++) {
      InjectedFaults faults = InjectedFaults.into(background, seed, from, gap, stuckRows, 60);
      sum = sum.plus(FaultScore.of(faults));
      soon += FaultScore.of(faults, QualityJudge.REACH).all().hit();
    }
    FaultScore.Tally all = sum.all();
    FaultScore.Tally notStuck = sum.but(InjectedFaults.Kind.STUCK);
    out.printf(
        Locale.ROOT,
        "%s with faults, %d seeds: %d of %d events found (%.3f); rows: recall %.3f, without"
            + " stuck %.3f, precision %.3f%n",
        background.name(),
        SEEDS,
        all.found(),
        all.events(),
        all.found() / (double) all.events(),
        all.hit() / (double) all.rows(),
        notStuck.hit() / (double) notStuck.rows(),
        sum.precision());
    out.printf(
        "    %d rows were qualified more than %d rows later%n",
        all.hit() - soon, QualityJudge.REACH);
    sum.kinds().entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(
            e ->
                out.printf(
                    "    %-12s %3d of %3d events, %5d of %5d rows%n",
                    e.getKey(),
                    e.getValue().found(),
                    e.getValue().events(),
                    e.getValue().hit(),
                    e.getValue().rows()));
  }
}
