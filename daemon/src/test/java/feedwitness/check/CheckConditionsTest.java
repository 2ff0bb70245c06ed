package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.alarm.Condition;
import feedwitness.alarm.Presence;
import feedwitness.quantity.PointName;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What checks tell through the door for alarms. */
class CheckConditionsTest {
  private final Season season = new Season(5);

  private List<Condition> conditions(double day) {
    CheckDesk desk =
        new CheckDesk(
            Bench.SHELF,
            CheckLimits.USUAL,
            subject -> Optional.of(new Mark(1, 1, Season.at(-1))),
            () -> Bench.ZONE);
    desk.resume(season.evidence(), new When(0, Season.at(day)));
    return CheckConditions.of(
        Bench.TANK, season.chart(), CheckInterval.USUAL, desk, Season.at(day), Bench.ZONE);
  }

  private List<String> active(double day) {
    return conditions(day).stream()
        .filter(one -> one.presence() == Presence.ACTIVE)
        .map(one -> one.kind().code())
        .toList();
  }

  @Test
  void remindsOfAProbeThatWasNeverChecked() {
    assertEquals(List.of(), active(5), "set up less than a week ago");
    assertEquals(List.of("check-due"), active(6.5));
  }

  @Test
  void saysDueThenOverdue() {
    season.check(0, 0, 0);
    assertEquals(List.of(), active(3));
    assertEquals(List.of("check-due"), active(8));
    assertEquals(List.of("check-overdue"), active(12));
  }

  @Test
  void saysThatAProbeWasLeftOutOfTolerance() {
    season.check(0, -6, 0);
    assertEquals(List.of("check-failed"), active(1));
    assertTrue(
        conditions(1).stream()
            .anyMatch(one -> one.words().contains("6.0 % low, tolerance ± 3.0 %")),
        conditions(1)::toString);
  }

  @Test
  void saysThatAProbeSlowlyLosesBeforeItFails() {
    for (int week = 0; week < 5; week++) {
      season.check(7 * week, -0.7 * week, 0);
    }
    assertEquals(List.of("probe-losing"), active(29));
  }

  @Test
  void givesEveryKindItsOwnStanding() {
    assertEquals(CheckKinds.ALL, conditions(0).stream().map(Condition::kind).toList());
    assertEquals(
        "meter-pen", CheckConditions.alarmSubject(CheckSubject.meter(new PointName("pen"))));
  }
}
