package feedwitness.check;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** Records of a season of checks of the tank probe, for tests. */
final class Season {
  static final Instant START = Instant.parse("2026-03-01T09:00:00Z");

  /** What checks with the same bottles scatter by, %; what {@link #check} writes as budget. */
  static final double REPEAT = 0.3;

  private final Random random;
  private final List<CheckEvidence> evidence = new ArrayList<>();
  private int checks;

  Season(long seed) {
    random = new Random(seed);
  }

  static Instant at(double day) {
    return START.plusMillis((long) (day * 86_400_000));
  }

  private static Mark mark(double day) {
    return new Mark(1, (long) (day * 86_400), at(day));
  }

  List<CheckEvidence> evidence() {
    return List.copyOf(evidence);
  }

  ProbeHistory history() {
    return ProbeHistory.of(Bench.TANK, evidence);
  }

  ControlChart chart() {
    return ControlChart.of(history(), 3, 1.5);
  }

  /** A check as found in two standards that finds an error, with scatter, both in %. */
  void check(double day, double percent, double scatter) {
    String id = "tank-" + ++checks;
    Entry entry = new Entry(id, Bench.TANK, at(day), "the grower");
    evidence.add(
        new CheckStarted(
            entry,
            List.of("low"),
            List.of(Bench.LOW.title()),
            3,
            Double.NaN,
            Bench.plain().basis(),
            1.5,
            Optional.of(mark(day)),
            List.of()));
    double found = percent + scatter * random.nextGaussian();
    evidence.add(
        new StandardMeasured(
            entry,
            Round.AS_FOUND,
            new StandardResult(
                "low",
                Bench.LOW.title(),
                1.413,
                1.3,
                1.3 * (1 + found / 100),
                1.3 * (1 + found / 100),
                21,
                20,
                List.of(
                    new Doubt(Doubt.Source.CERTIFICATE, 0.5, false),
                    new Doubt(Doubt.Source.TEMPERATURE, REPEAT, false)),
                3)));
    evidence.add(new CheckClosed(entry, CheckClosed.Ending.FINISHED, Verdict.CANT_TELL, ""));
  }

  void clean(double day) {
    evidence.add(
        new ProbeCleaned(
            new Entry("", Bench.TANK, at(day), "the grower"), "brush", Optional.of(mark(day))));
  }

  void replace(double day) {
    evidence.add(
        new ProbeReplaced(
            new Entry("", Bench.TANK, at(day), "the grower"), "new cell", Optional.of(mark(day))));
  }

  void compare(double day, ComparisonMade.Type type, double percent) {
    evidence.add(
        new ComparisonMade(
            new Entry("", Bench.TANK, at(day), "the grower"),
            type,
            "pen",
            1.5 * (1 + percent / 100),
            0.01,
            1.5,
            0.01,
            3,
            ""));
  }
}
