package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What a failed check says of the readings before it. */
class BackTraceTest {
  private static final Instant START = Instant.parse("2026-06-07T09:00:00Z");
  private static final Entry CAUSE = new Entry("tank-2", Bench.TANK, START, "feedwitness");

  private static Mark mark(int day) {
    return new Mark(1, day * 86_400L, START.plus(Duration.ofDays(day)));
  }

  private static Errors errors(double low, double high) {
    return new Errors(List.of(new Errors.Node(1.413, low, 0.6), new Errors.Node(2.77, high, 0.6)));
  }

  private static BackTrace.Known known(int day, double percent) {
    return new BackTrace.Known(mark(day), errors(percent, percent));
  }

  @Test
  void drawsAStraightLineSinceTheLastGoodCheck() {
    List<RangeQualified> ranges =
        BackTrace.qualify(CAUSE, known(0, -0.2), known(10, -5.2), List.of(), Bench.ZONE);
    assertEquals(1, ranges.size());
    RangeQualified range = ranges.get(0);
    assertEquals(RangeQualified.Shape.INTERPOLATED, range.shape());
    assertFalse(range.covers(mark(0)));
    assertTrue(range.covers(mark(1)) && range.covers(mark(10)));
    assertFalse(range.covers(mark(11)));
    assertEquals(-2.7, range.likely(mark(5).at(), 1.5).percent(), 1e-9);
    assertEquals(1.5 / 0.973, range.corrected(mark(5).at(), 1.5), 1e-9);
    assertTrue(
        range.likely(mark(5).at(), 1.5).standardPercent()
            > range.likely(mark(10).at(), 1.5).standardPercent());
  }

  @Test
  void knowsThatTheErrorDependsOnStrength() {
    RangeQualified range =
        BackTrace.qualify(
                CAUSE,
                new BackTrace.Known(mark(0), errors(0, 0)),
                new BackTrace.Known(mark(4), errors(-2, -6)),
                List.of(),
                Bench.ZONE)
            .get(0);
    assertEquals(-2, range.likely(mark(4).at(), 0.8).percent(), 1e-9);
    assertEquals(-4, range.likely(mark(4).at(), (1.413 + 2.77) / 2).percent(), 1e-9);
    assertEquals(-6, range.likely(mark(4).at(), 5).percent(), 1e-9);
  }

  @Test
  void interpolatesAcrossNoCleaning() {
    List<RangeQualified> ranges =
        BackTrace.qualify(
            CAUSE, known(0, 0), known(10, -5), List.of(mark(3), mark(7), mark(20)), Bench.ZONE);
    assertEquals(
        List.of(
            RangeQualified.Shape.START_KNOWN,
            RangeQualified.Shape.UNKNOWN,
            RangeQualified.Shape.END_KNOWN),
        ranges.stream().map(RangeQualified::shape).toList());
    assertEquals(mark(3), ranges.get(0).through());
    assertEquals(mark(3), ranges.get(1).after());
    assertEquals(-5, ranges.get(2).likely(mark(8).at(), 1.5).percent(), 1e-9);
    assertTrue(ranges.get(2).likely(mark(8).at(), 1.5).standardPercent() >= 5);
    assertEquals(0, ranges.get(1).likely(mark(5).at(), 1.5).percent(), 1e-9);
  }

  @Test
  void leavesNoMeasurementOutAndNoneTwice() {
    List<RangeQualified> ranges =
        BackTrace.qualify(CAUSE, known(0, 0), known(10, -5), List.of(mark(3), mark(7)), Bench.ZONE);
    for (int day = 1; day <= 10; day++) {
      Mark at = mark(day);
      assertEquals(1, ranges.stream().filter(range -> range.covers(at)).count());
    }
  }

  @Test
  void qualifiesFromTheRecordsOfTwoChecks() {
    Bench first = new Bench(1, START);
    checked(first, "tank-1", mark(0));
    Bench second = new Bench(2, START.plus(Duration.ofDays(7)));
    second.gain = 0.94;
    checked(second, "tank-2", mark(7));
    first.kept.addAll(second.kept);
    List<RangeQualified> ranges =
        BackTrace.ofNewest(ProbeHistory.of(Bench.TANK, first.kept), Optional.empty(), Bench.ZONE);
    assertEquals(1, ranges.size());
    assertEquals(mark(0), ranges.get(0).after());
    assertEquals(mark(7), ranges.get(0).through());
    assertEquals(-3, ranges.get(0).likely(START.plus(Duration.ofHours(84)), 1.5).percent(), 0.2);
    assertEquals("tank-2", ranges.get(0).entry().check());
  }

  @Test
  void doubtsEverythingIfThereNeverWasAGoodCheck() {
    Bench bench = new Bench(3, START.plus(Duration.ofDays(7)));
    bench.gain = 0.9;
    checked(bench, "tank-1", mark(7));
    List<RangeQualified> ranges =
        BackTrace.ofNewest(
            ProbeHistory.of(Bench.TANK, bench.kept), Optional.of(mark(1)), Bench.ZONE);
    assertEquals(1, ranges.size());
    assertEquals(RangeQualified.Shape.END_KNOWN, ranges.get(0).shape());
    assertTrue(ranges.get(0).note().startsWith("there was no good check before"));
  }

  @Test
  void qualifiesNothingAfterAGoodCheck() {
    Bench bench = new Bench(4, START);
    checked(bench, "tank-1", mark(0));
    assertEquals(
        List.of(),
        BackTrace.ofNewest(
            ProbeHistory.of(Bench.TANK, bench.kept), Optional.of(mark(0)), Bench.ZONE));
  }

  private static void checked(Bench bench, String id, Mark mark) {
    CheckRequest usual = Bench.request(Bench.plain(), id);
    CheckSession session =
        bench.round(
            bench.begin(
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
                    Optional.of(mark),
                    Bench.TODAY,
                    false)));
    bench.keep(session.finish("the grower", bench.now()));
  }
}
