package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.StandardShelf;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The service is started again in mid-check. */
class ResumptionTest {
  private final Bench bench = new Bench();

  private Resumption resume(StandardShelf shelf) {
    // Out of the text fields, as a ledger would hand them back.
    List<CheckEvidence> read =
        bench.kept.stream()
            .map(one -> CheckEvidence.read(one.kind(), one.toFields()).orElseThrow())
            .toList();
    ProbeHistory.Check open = ProbeHistory.of(Bench.TANK, read).open().orElseThrow();
    return Resumption.of(
        open.started(), open.since(), shelf, CheckLimits.USUAL, bench.now(), Bench.ZONE);
  }

  @Test
  void goesOnWithTheStandardThatWasBeingMeasured() {
    CheckSession session = bench.begin(Bench.plain());
    bench.immerse(session);
    bench.settle(session, Bench.LOW, 400);
    bench.immerse(session);
    bench.settle(session, Bench.MIDDLE, 20);
    bench.wait(Duration.ofMinutes(2));

    CheckSession again = assertInstanceOf(Resumption.Resumed.class, resume(Bench.SHELF)).session();
    assertEquals(Phase.RINSE, again.phase());
    assertEquals(Bench.MIDDLE, again.standard().orElseThrow());
    assertEquals(session.measured(), again.measured());
    bench.round(again);
    assertEquals(Verdict.PASS, again.verdict());
  }

  @Test
  void remembersCleaningAndAdjusting() {
    bench.gain = 0.93;
    CheckSession session = bench.round(bench.begin(Bench.plain()));
    bench.keep(session.cleaned("the grower", "brush", bench.now()));
    bench.round(session);
    bench.keep(session.adjust("the grower", "tank-a1", bench.now()));

    CheckSession again = assertInstanceOf(Resumption.Resumed.class, resume(Bench.SHELF)).session();
    assertEquals(Round.AS_LEFT, again.round());
    assertEquals(session.instrument(), again.instrument());
    bench.round(again);
    assertEquals(Verdict.PASS, again.verdict());
  }

  @Test
  void isClosedAsAbandonedAfterALongTime() {
    bench.round(bench.begin(Bench.plain()));
    bench.wait(Duration.ofHours(3));
    CheckClosed end = assertInstanceOf(Resumption.Lost.class, resume(Bench.SHELF)).evidence();
    assertEquals(CheckClosed.Ending.LOST, end.ending());
    assertEquals(Verdict.PASS, end.verdict());
    assertTrue(end.note().contains("the service was started again"), end::note);
    bench.kept.add(end);
    assertTrue(ProbeHistory.of(Bench.TANK, bench.kept).open().isEmpty());
  }

  @Test
  void isClosedWhenTheBottleIsGone() {
    bench.begin(Bench.plain());
    CheckClosed end =
        assertInstanceOf(
                Resumption.Lost.class, resume(new StandardShelf(List.of(Bench.LOW, Bench.HIGH))))
            .evidence();
    assertTrue(end.note().contains("no longer on the shelf"), end::note);
  }

  @Test
  void keepsWhatItHadFoundWhenTheShelfIsEmpty() {
    bench.gain = 0.93;
    bench.round(bench.begin(Bench.plain()));
    CheckClosed end =
        assertInstanceOf(Resumption.Lost.class, resume(StandardShelf.EMPTY)).evidence();
    assertEquals(Verdict.FAIL, end.verdict());
  }
}
