package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.calibration.StandardShelf;
import feedwitness.measurement.Basis;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Another probe hangs there: what was found out about the one before says nothing of it. */
class ProbeReplacedTest {
  private final Season season = new Season(6);

  private CheckInterval.Due due(double day) {
    return CheckInterval.USUAL.due(season.chart(), Season.at(day), Bench.ZONE);
  }

  private void fourGoodChecks() {
    for (int week = 0; week < 4; week++) {
      season.check(7 * week, 0, 0.1);
    }
  }

  @Test
  void chartAndIntervalBeginAnew() {
    fourGoodChecks();
    assertTrue(due(22).interval().toDays() > 7, due(22)::toString);
    season.replace(23);
    assertEquals(CheckInterval.Status.NEVER_CHECKED, due(23).status());
    assertTrue(due(23).words().contains("not checked since it was replaced on "), due(23)::words);
    assertEquals(0, season.chart().drift().points());
    assertEquals(4, season.chart().points().size(), "nothing recorded is gone");
    season.check(24, 0, 0.1);
    assertEquals(7, due(25).interval().toDays());
    assertEquals(1, season.chart().drift().points());
  }

  @Test
  void itsFirstCheckIsAskedForAWeekLater() {
    fourGoodChecks();
    season.replace(23);
    CheckDesk desk =
        new CheckDesk(
            StandardShelf.EMPTY,
            CheckLimits.USUAL,
            subject -> Optional.of(new Mark(1, 1, Season.at(-1))),
            () -> Bench.ZONE);
    desk.resume(season.evidence(), new When(0, Season.at(24)));
    assertEquals(Verdict.CANT_TELL, desk.lastVerdict(Bench.TANK));
    assertFalse(isDue(desk, 24));
    assertTrue(isDue(desk, 31));
  }

  private boolean isDue(CheckDesk desk, double day) {
    return CheckConditions.of(
            Bench.TANK, season.chart(), CheckInterval.USUAL, desk, Season.at(day), Bench.ZONE)
        .stream()
        .anyMatch(
            one ->
                one.kind().equals(CheckKinds.DUE)
                    && one.presence() == feedwitness.alarm.Presence.ACTIVE);
  }

  @Test
  void aFailedCheckCastsNoDoubtOnReadingsOfTheProbeBefore() {
    season.check(0, 0, 0);
    season.replace(3);
    season.check(7, -6, 0);
    List<RangeQualified> ranges =
        BackTrace.ofNewest(
            season.history(), Optional.of(new Mark(1, 1, Season.at(-1))), Bench.ZONE);
    assertEquals(1, ranges.size());
    assertEquals(Season.at(3), ranges.get(0).after().at());
    assertEquals(RangeQualified.Shape.END_KNOWN, ranges.get(0).shape());
  }

  @Test
  void anAdjustmentOfTheOldOneIsNoLongerInUse() {
    Bench bench = new Bench();
    bench.gain = 0.93;
    CheckSession session = bench.round(bench.begin(Bench.plain()));
    bench.keep(session.cleaned("the grower", "brush", bench.now()));
    bench.round(session);
    bench.keep(session.adjust("the grower", "tank-a1", bench.now()));
    bench.round(session);
    bench.keep(session.finish("the grower", bench.now()));
    CheckDesk desk =
        new CheckDesk(
            Bench.SHELF, CheckLimits.USUAL, subject -> Optional.empty(), () -> Bench.ZONE);
    desk.resume(bench.kept, bench.now());
    assertInstanceOf(CalibrationCurve.Linear.class, desk.history(Bench.TANK).curve());
    CheckReply reply =
        desk.replaced(
            Bench.TANK, "the grower", "serial 4711", bench.now(), Optional.of(Bench.BEFORE));
    assertTrue(reply.accepted(), reply::words);
    assertInstanceOf(CalibrationCurve.Identity.class, desk.history(Bench.TANK).curve());
    assertEquals(Optional.empty(), desk.history(Bench.TANK).undoable());
    assertEquals(1, desk.history(Bench.TANK).adjustments().size(), "nothing recorded is gone");
  }

  @Test
  void notWhileItIsBeingChecked() {
    Bench bench = new Bench();
    CheckDesk desk =
        new CheckDesk(
            Bench.SHELF, CheckLimits.USUAL, subject -> Optional.empty(), () -> Bench.ZONE);
    desk.begin(Bench.request(Bench.plain(), "tank-1"), bench.now());
    CheckReply reply = desk.replaced(Bench.TANK, "the grower", "", bench.now(), Optional.empty());
    assertFalse(reply.accepted());
    assertTrue(reply.words().contains("finish or abandon it first"), reply::words);
  }

  @Test
  void anotherProfileThanAtTheLastCheckIsAskedAbout() {
    CheckDesk desk =
        new CheckDesk(
            Bench.SHELF, CheckLimits.USUAL, subject -> Optional.empty(), () -> Bench.ZONE);
    season.check(0, 0, 0);
    desk.resume(season.evidence(), new When(0, Season.at(7)));
    Basis was = Bench.plain().basis();
    Basis now =
        new Basis(
            was.rules(),
            "pushed-csv",
            was.indicatedAt25(),
            was.calibration(),
            was.compensation(),
            was.limits());
    CheckRequest request = Bench.request(new Instrument(now, Double.NaN), "tank-9");
    CheckRequest.Confirm asked =
        assertInstanceOf(
            CheckRequest.Confirm.class, desk.begin(request, new When(0, Season.at(7))));
    assertTrue(
        asked.objections().get(0).contains("'modbus-float' at its last check"), asked::toString);
    assertTrue(
        desk.replaced(Bench.TANK, "Kim", "", new When(1, Season.at(7)), Optional.empty())
            .accepted());
    assertInstanceOf(CheckRequest.Begun.class, desk.begin(request, new When(2, Season.at(7))));
  }
}
