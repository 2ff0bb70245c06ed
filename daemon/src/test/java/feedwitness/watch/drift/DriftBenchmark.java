package feedwitness.watch.drift;

import feedwitness.quantity.PointName;
import feedwitness.simulate.Schedule;
import feedwitness.site.DriftLimits;
import feedwitness.site.FeedLine;
import feedwitness.watch.drift.DriftFinding.Stage;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * All figures of docs/detection.md, with fixed seeds: {@code mvn -Pbench-drift -pl daemon -am test
 * -Drecording=FILE.csv}. The recording is one-minute water, see {@link RecordedSteps}.
 */
public final class DriftBenchmark {
  private static final int SEASONS = 1000;
  private static final double NONE = Double.POSITIVE_INFINITY;
  private final PrintStream out =
      new PrintStream(System.out, true, StandardCharsets.UTF_8); // docs are copied from it

  private DriftBenchmark() {}

  /**
   * Runs everything.
   *
   * @param arguments the recording, or nothing
   */
  public static void main(String[] arguments) throws Exception {
    DriftBenchmark benchmark = new DriftBenchmark();
    benchmark.residuals();
    benchmark.memory();
    for (double memory : new double[] {0, 0.3, 0.6}) {
      benchmark.seasons(memory);
    }
    benchmark.rampLimit();
    benchmark.fullSignal();
    if (arguments.length > 0 && !arguments[0].isBlank()) {
      benchmark.recording(Path.of(arguments[0]));
    } else {
      benchmark.say("recording: none given, -Drecording=FILE.csv");
    }
    benchmark.throughput();
  }

  private void say(String format, Object... values) {
    out.printf(Locale.ROOT, format + "%n", values);
  }

  private void residuals() {
    say("independent residuals, a false signal every 43200");
    for (double clip : new double[] {NONE, CusumPair.CLIP}) {
      say("  clip %s: run length %.0f", clip, DriftFigures.falseRunLength(clip, 2000, 11));
      for (int i = 0; i < DriftFigures.SHIFTS.length; i++) {
        double delay = DriftFigures.delay(clip, DriftFigures.SHIFTS[i], 20_000, 12);
        say(
            "    %.1f sigma: delay %.2f, %.2f of the optimum",
            DriftFigures.SHIFTS[i], delay, delay / DriftFigures.OPTIMUM[i]);
      }
    }
  }

  private void memory() {
    say("the whole chart from its first event, about one a month at 24 events a day (720 events)");
    for (double memory : new double[] {0, 0.3, 0.5, 0.8, 0.9, 0.95}) {
      double run = DriftFigures.chartRunLength(memory, 500, 13);
      say("  phi %.2f: run length %.0f, %.2f of 720", memory, run, run / 720);
    }
  }

  private void seasons(double memory) {
    double seen = 0;
    double notices = 0;
    for (int i = 0; i < SEASONS; i++) {
      EventSeason season = EventSeason.play(100_000 + i, memory, EventSeason.Fault.NONE);
      seen += season.falseSeen;
      notices += season.falseNotices;
    }
    say(
        "%d seasons of 30 days, 24 events a day, sigma 0.9 %%, phi %.1f, about one a month",
        SEASONS, memory);
    say(
        "  by chance in 30 days: small changes seen %.2f, notices %.3f",
        seen / SEASONS, notices / SEASONS);
    say(
        "  5 %% step noticed within 3 events: %d",
        DriftFigures.seasons(
            SEASONS, 200_000, memory, EventSeason.Fault.STEP_5, DriftFigures::stepInThreeEvents));
    say(
        "  3 %% step noticed within 3 events, though the limit is 5 %%: %d",
        DriftFigures.seasons(
            SEASONS, 200_000, memory, EventSeason.Fault.STEP_3, DriftFigures::stepInThreeEvents));
    say(
        "  1 %% a day seen within 1.5 days: %d; alarmed within 0.5 day of 10 %%: %d",
        DriftFigures.seasons(
            SEASONS, 300_000, memory, EventSeason.Fault.RAMP_1, DriftFigures::rampSeen),
        DriftFigures.seasons(
            SEASONS, 300_000, memory, EventSeason.Fault.RAMP_1, DriftFigures::rampAlarmed));
  }

  private void rampLimit() {
    say("1 %% a day within 1.5 days, normal, scatter and memory known, a false signal every 720");
    for (double memory : new double[] {0, 0.3, 0.6}) {
      RampLimit limit = new RampLimit(memory);
      say(
          "  phi %.1f: pair of sums %.1f %%; looking for just this ramp %.1f %% (every %.0f)",
          memory,
          100 * limit.pair(720, 20_000, 14),
          100 * limit.matched(2.73, 20_000, 15),
          limit.matchedFalseEvery(2.73, 2000, 16));
    }
  }

  private void fullSignal() {
    int notices = 0;
    int seen = 0;
    int weeks = 4;
    for (int seed = 1; seed <= weeks; seed++) {
      NurseryWeek week =
          new NurseryWeek(
              500 + seed, Schedule.quiet(), NurseryWeek.glasshouse(List.of(0.80, 1.50, 1.95)));
      week.until(NurseryWeek.local(16, 0, 0));
      for (DriftFinding finding : week.findings()) {
        if (finding.kind().isDrift()) {
          seen++;
          notices += finding.stage().compareTo(Stage.NOTICE) >= 0 ? 1 : 0;
        }
      }
    }
    say("%d quiet weeks at full signal: seen %d, notices %d", weeks, seen, notices);
  }

  private void recording(Path path) throws Exception {
    RecordedSteps steps = RecordedSteps.read(path);
    int put = 0;
    int inTime = 0;
    int other = 0;
    double days = 0;
    double delay = 0;
    for (int seed = 0; seed <= 10; seed++) {
      RecordedSteps.Score score = steps.play(seed);
      say(
          "  seed %d: %d steps, %d within 10 min, other findings %d in %.1f days",
          seed, score.steps(), score.inTime(), score.others(), score.days());
      put += score.steps();
      inTime += score.inTime();
      delay += score.meanDelayMinutes() * score.inTime();
      other += score.others();
      days += score.days();
    }
    double perMonth = other * 30 / days;
    say(
        "recording: %d of %d steps within 10 min (%.1f %%), mean delay %.1f min, other findings %.2f"
            + " in 30 days",
        inTime, put, 100.0 * inTime / put, delay / inTime, perMonth);
    if (put < 1000 || inTime < 0.95 * put || perMonth > 3) {
      throw new IllegalStateException("the recording's reach is not met");
    }
  }

  private void throughput() {
    Random random = new Random(1);
    double[] some = random.doubles(4096, 1.49, 1.51).toArray();
    DriftWatch watch =
        new DriftWatch(
            new FeedLine(
                new PointName("line"),
                "line",
                java.util.Optional.empty(),
                java.util.Optional.empty(),
                new PointName("line"),
                java.util.Optional.empty(),
                new feedwitness.site.Mixer.None(),
                List.of(),
                Double.NaN,
                DriftLimits.USUAL));
    long millis = 0;
    for (int round = 0; round < 4; round++) {
      int count = 5_000_000;
      long began = System.nanoTime();
      for (int i = 0; i < count; i++) {
        millis += 1000;
        watch.line(1, millis * 1_000_000, millis, some[i & 4095], 0.01, 18 + (i & 7) * 0.1);
      }
      double seconds = (System.nanoTime() - began) / 1e9;
      say(
          "watch, one reading a second: %.2f million a second, state %d octets",
          count / seconds / 1e6, watch.state().length());
    }
  }
}
