package feedwitness.watch.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.simulate.Schedule;
import feedwitness.watch.diagnosis.Cause;
import feedwitness.watch.drift.DriftFinding.Kind;
import feedwitness.watch.drift.DriftFinding.Stage;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The week worth showing, at full signal: each fault is noticed and none is taken for another. */
class DriftWeekTest {
  private static final NurseryWeek WEEK =
      new NurseryWeek(7, Schedule.week(), NurseryWeek.glasshouse(List.of(0.80, 1.50, 1.95)));

  @BeforeAll
  static void play() {
    WEEK.until(NurseryWeek.local(12, 3, 0));
    WEEK.restart();
    WEEK.until(NurseryWeek.local(16, 0, 0));
  }

  private static List<DriftFinding> told(Instant from, Instant to) {
    return WEEK.findings().stream()
        .filter(f -> !f.detected().isBefore(from) && f.detected().isBefore(to))
        .filter(f -> f.stage().compareTo(Stage.NOTICE) >= 0)
        .toList();
  }

  private static List<DriftFinding> onDay(int day) {
    return told(NurseryWeek.local(day, 0, 0), NurseryWeek.local(day + 1, 0, 0));
  }

  @Test
  void mondayIsQuiet() {
    assertEquals(List.of(), onDay(9));
  }

  @Test
  void tuesdaysStickingValveIsNoticedThenAlarmed() {
    List<DriftFinding> told = onDay(10);
    DriftFinding first = told.get(0);
    assertTrue(first.kind().isDrift() && first.detected().isBefore(NurseryWeek.local(10, 12, 45)));
    assertFalse(first.start().isBefore(NurseryWeek.local(10, 10, 0)), () -> "" + first.start());
    DriftFinding last = told.get(told.size() - 1);
    assertEquals(Stage.ALARM, last.stage());
    assertEquals(Kind.RAMP, last.kind());
    assertTrue(last.sizePercent() < -8 && last.sizePercent() > -13, () -> "" + last.sizePercent());
    assertTrue(last.diagnosis().causes().stream().anyMatch(c -> c.cause() == Cause.INJECTOR));
    assertEquals(3, last.diagnosis().tests().size());
  }

  @Test
  void wednesdaysScaleIsNoticedAndCannotBeToldFromTheInjector() {
    List<DriftFinding> told = onDay(11);
    DriftFinding last = told.get(told.size() - 1);
    assertTrue(last.kind().isDrift());
    assertTrue(last.diagnosis().ambiguous(), () -> last.diagnosis().words());
    assertTrue(last.diagnosis().causes().stream().anyMatch(c -> c.cause() == Cause.PROBE_FOULED));
    assertTrue(
        told.stream().noneMatch(f -> f.start().isBefore(NurseryWeek.local(11, 8, 0))),
        told::toString);
  }

  @Test
  void thursdaysTopUpOfTheTankIsNoMatterOfTheLine() {
    assertEquals(List.of(), onDay(12));
  }

  @Test
  void fridaysEmptyBarrelIsNoInjectorDrift() {
    List<DriftFinding> told = onDay(13);
    assertEquals(List.of(Kind.PLAIN_WATER), told.stream().map(DriftFinding::kind).toList());
    assertEquals(Cause.STOCK_EMPTY, told.get(0).diagnosis().causes().get(0).cause());
  }

  @Test
  void saturdaysPulledCableAndOpenBypassAreNoInjectorDrift() {
    List<DriftFinding> told = onDay(14);
    assertEquals(List.of(Kind.PLAIN_WATER), told.stream().map(DriftFinding::kind).toList());
    assertFalse(told.get(0).start().isBefore(NurseryWeek.local(14, 13, 25)));
  }

  @Test
  void sundaysFlushIsPlainWater() {
    assertEquals(List.of(Kind.PLAIN_WATER), onDay(15).stream().map(DriftFinding::kind).toList());
  }

  @Test
  void itStandsAsUsualInTheEnd() {
    DriftStanding standing = WEEK.watch().standing();
    assertEquals(DriftStanding.Phase.NORMAL, standing.phase());
    assertEquals(100, standing.sharePercent(), 3);
    assertEquals(80, standing.ratio(), 3);
    assertTrue(standing.open().isEmpty());
  }
}
