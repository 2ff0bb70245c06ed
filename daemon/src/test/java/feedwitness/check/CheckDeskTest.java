package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.CalibrationCurve;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** A week at Quarry End, from one Sunday's check to the next. */
class CheckDeskTest {
  private static final Instant WEEK_BEFORE = Bench.SUNDAY.minus(Duration.ofDays(7));

  private final Bench bench = new Bench(11, WEEK_BEFORE);
  private CheckDesk desk = desk();

  private static CheckDesk desk() {
    return new CheckDesk(
        Bench.SHELF,
        CheckLimits.USUAL,
        subject -> Optional.of(new Mark(1, 1, WEEK_BEFORE.minus(Duration.ofDays(30)))),
        () -> Bench.ZONE);
  }

  private void begin(String id, long sequence) {
    CheckRequest usual =
        Bench.request(Bench.instrument(desk.history(Bench.TANK).curve(), false, Double.NaN), id);
    CheckRequest request =
        new CheckRequest(
            id,
            usual.subject(),
            usual.author(),
            usual.shelf(),
            usual.standards(),
            3,
            usual.instrument(),
            1.5,
            1.95,
            1.52,
            Optional.of(new Mark(1, sequence, bench.now().wall())),
            Bench.TODAY,
            false);
    assertInstanceOf(CheckRequest.Begun.class, desk.begin(request, bench.now()));
  }

  private CheckReply act(java.util.function.Function<CheckSession, CheckReply> deed) {
    CheckReply reply = desk.act(Bench.TANK, deed, bench.now());
    assertTrue(reply.accepted(), reply::words);
    return reply;
  }

  private void round() {
    while (desk.view(Bench.TANK).orElseThrow().phase() == Phase.RINSE) {
      act(session -> session.rinsed(bench.now()));
      act(session -> session.immersed(bench.now()));
      boolean low = desk.view(Bench.TANK).orElseThrow().standard().orElse("").contains("0.01");
      settle(bench.indicates(low ? Bench.LOW : Bench.MIDDLE));
    }
  }

  private void settle(double value) {
    for (int i = 0; i < 61; i++) {
      bench.wait(Duration.ofSeconds(1));
      desk.reading(Bench.TANK, new ProbeReading(bench.stamp(), value, bench.celsius), 25 * value);
    }
  }

  private void inTheTank(int readings) {
    for (int i = 0; i < readings; i++) {
      bench.wait(Duration.ofSeconds(5));
      desk.reading(Bench.TANK, new ProbeReading(bench.stamp(), 1.3, 17), 1.52);
    }
  }

  /** Good a week ago; 4.6 % low today, 2.1 % low once cleaned, put right. */
  private void twoSundays() {
    begin("tank-1", 1000);
    round();
    act(session -> session.finish("the grower", bench.now()));
    inTheTank(10);
    bench.wait(Duration.ofDays(7));
    bench.gain = 0.954;
    begin("tank-2", 600_000);
    round();
    act(session -> session.cleaned("the grower", "soft brush, vinegar", bench.now()));
    bench.gain = 0.979;
    round();
    act(session -> session.adjust("the grower", "tank-a1", bench.now()));
    round();
  }

  @Test
  void qualifiesTheWeekWhenTheCheckEnds() {
    twoSundays();
    CheckReply reply = act(session -> session.finish("the grower", bench.now()));
    assertEquals(
        List.of(CheckClosed.KIND, RangeQualified.KIND),
        reply.evidence().stream().map(CheckEvidence::kind).toList());
    RangeQualified range = (RangeQualified) reply.evidence().get(1);
    assertEquals(RangeQualified.Shape.INTERPOLATED, range.shape());
    assertEquals(600_000, range.through().sequence());
    Instant middle = WEEK_BEFORE.plus(Duration.ofHours(84));
    assertEquals(-2.3, range.likely(middle, 1.5).percent(), 0.15);
    assertEquals(List.of(range), desk.history(Bench.TANK).covering(new Mark(1, 300_000, middle)));
    assertInstanceOf(CalibrationCurve.Linear.class, desk.history(Bench.TANK).curve());
  }

  @Test
  void keepsReadingsApartUntilTheProbeIsBack() {
    assertFalse(desk.suppressed(Bench.TANK));
    begin("tank-1", 1000);
    assertTrue(desk.suppressed(Bench.TANK));
    round();
    act(session -> session.finish("the grower", bench.now()));
    assertTrue(desk.suppressed(Bench.TANK));
    inTheTank(4);
    assertTrue(desk.suppressed(Bench.TANK));
    inTheTank(2);
    assertFalse(desk.suppressed(Bench.TANK));
    assertFalse(desk.returned(Bench.TANK, "the grower", bench.now()).accepted());
  }

  @Test
  void goesOnAfterARestartFromTheFieldsOfItsRecords() {
    twoSundays();
    List<CheckEvidence> kept =
        desk.evidence().stream()
            .map(one -> CheckEvidence.read(one.kind(), one.toFields()).orElseThrow())
            .toList();
    CheckView before = desk.view(Bench.TANK).orElseThrow();
    desk = desk();
    assertEquals(List.of(), desk.resume(kept, bench.now()));
    assertEquals(before.round(), desk.view(Bench.TANK).orElseThrow().round());
    assertEquals(before.verdict(), desk.view(Bench.TANK).orElseThrow().verdict());
    act(session -> session.finish("the grower", bench.now()));
    assertEquals(1, desk.history(Bench.TANK).qualifications().size());
  }

  @Test
  void stillQualifiesIfTheCheckIsLostInARestart() {
    twoSundays();
    List<CheckEvidence> kept = desk.evidence();
    bench.wait(Duration.ofHours(5));
    desk = desk();
    List<CheckEvidence> fresh = desk.resume(kept, bench.now());
    assertEquals(
        List.of(CheckClosed.KIND, RangeQualified.KIND),
        fresh.stream().map(CheckEvidence::kind).toList());
    assertEquals(Optional.empty(), desk.view(Bench.TANK));
    assertTrue(desk.suppressed(Bench.TANK));
    bench.wait(Duration.ofMinutes(61));
    assertEquals(
        List.of(ProbeReturned.KIND),
        desk.tick(bench.now()).stream().map(CheckEvidence::kind).toList());
    assertFalse(desk.suppressed(Bench.TANK));
  }

  @Test
  void takesAnAdjustmentBackButNotDuringACheck() {
    twoSundays();
    CheckReply during =
        desk.undo(Bench.TANK, "tank-a2", "the grower", bench.now(), Optional.empty());
    assertFalse(during.accepted());
    assertTrue(during.words().contains("finish or abandon it first"), during::words);
    act(session -> session.finish("the grower", bench.now()));
    assertTrue(
        desk.undo(Bench.TANK, "tank-a2", "the grower", bench.now(), Optional.empty()).accepted());
    assertInstanceOf(CalibrationCurve.Identity.class, desk.history(Bench.TANK).curve());
    assertFalse(
        desk.undo(Bench.TANK, "tank-a3", "the grower", bench.now(), Optional.empty()).accepted());
  }

  @Test
  void remembersWhetherTheLastCheckLeftItGood() {
    assertEquals(Verdict.CANT_TELL, desk.lastVerdict(Bench.TANK));
    twoSundays();
    assertEquals(Verdict.PASS, desk.lastVerdict(Bench.TANK));
    bench.gain = 0.8;
    act(session -> session.finish("the grower", bench.now()));
    begin("tank-3", 700_000);
    round();
    act(session -> session.abandon("the grower", "rain", bench.now()));
    assertEquals(Verdict.FAIL, desk.lastVerdict(Bench.TANK));
  }

  @Test
  void putsACheckOnOnePage() {
    twoSundays();
    act(session -> session.finish("the grower", bench.now()));
    ProbeHistory.Check check = desk.history(Bench.TANK).checks().get(1);
    CheckRecord page = CheckRecord.of(check, "Quarry End Nursery", ZoneId.of("Europe/London"));
    String text =
        page.sections().stream()
            .map(
                section ->
                    section.title()
                        + "\n"
                        + section.lines().stream()
                            .map(line -> line.label() + ": " + line.value())
                            .collect(Collectors.joining("\n")))
            .collect(Collectors.joining("\n"));
    assertTrue(page.title().startsWith("Check of tank, 14 June 2026, 10:"), page::title);
    for (String words :
        List.of(
            "nursery: Quarry End Nursery",
            "checked by: the grower",
            "standard: KCl 0.01 mol/L, 1.413 mS/cm, lot QE-A07",
            "as found: KCl 0.02 mol/L, 2.77 mS/cm, lot QE-C11",
            "temperature: 21.4 °C",
            "error: 4.6 % low ± 1.2 %",
            "uncertainty from the bottle's certificate: 0.48 % standard",
            "uncertainty from what rinsing left behind: 0.06 % standard, assumed",
            "verdict in this standard: fail",
            "by the grower: soft brush, vinegar",
            "adjusted in two standards: slope and offset; from as the instrument says to slope 1.021",
            "as left: pass",
            "as found: fail",
            "check: finished")) {
      assertTrue(text.contains(words), () -> "'" + words + "' is not in:\n" + text);
    }
  }

  @Test
  void chartsTheSeason() {
    twoSundays();
    act(session -> session.finish("the grower", bench.now()));
    ControlChart chart = ControlChart.of(desk.history(Bench.TANK), 3, 1.5);
    assertEquals(
        List.of(
            ChartPoint.Source.AS_FOUND,
            ChartPoint.Source.AS_FOUND,
            ChartPoint.Source.AFTER_CLEANING,
            ChartPoint.Source.AS_LEFT),
        chart.points().stream().map(ChartPoint::source).toList());
    assertEquals(List.of(0, 0, 1, 2), chart.points().stream().map(ChartPoint::stretch).toList());
    assertEquals(2, chart.marks().size());
    CheckInterval.Due due = CheckInterval.USUAL.due(chart, bench.now().wall(), Bench.ZONE);
    assertEquals(CheckInterval.Status.GOOD, due.status());
    assertEquals(Duration.ofDays(7), due.interval());
  }

  @Test
  void noticesABucketOnlyOutsideAChecks() {
    desk.watchPlace(Bench.TANK, false);
    inTheTank(30);
    begin("tank-1", 1000);
    round();
    act(session -> session.finish("the grower", bench.now()));
    inTheTank(30);
    assertEquals(Optional.empty(), desk.outOfPlace(Bench.TANK));
    List<CheckEvidence> found = new ArrayList<>();
    for (double at25 : new double[] {0, 0, 2.77}) {
      for (int i = 0; i < 12; i++) {
        bench.wait(Duration.ofSeconds(5));
        found.addAll(desk.reading(Bench.TANK, new ProbeReading(bench.stamp(), at25, 21), at25));
      }
    }
    assertTrue(desk.outOfPlace(Bench.TANK).orElseThrow().contains("KCl 0.02 mol/L"));
    assertEquals(List.of(), found);
  }
}
