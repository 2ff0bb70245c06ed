package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A probe's errors over a season and what they say. */
class ControlChartTest {
  private final Season season = new Season(26);

  @Test
  void marksCleaningsAndAdjustmentsAndStartsAgainThere() {
    season.check(0, -1, 0.1);
    season.check(7, -1.5, 0.1);
    season.check(14, -2, 0.1);
    assertTrue(season.chart().drift().percentPerDay() < -0.05);
    season.clean(14);
    season.check(15, 0, 0.1);
    ControlChart chart = season.chart();
    assertEquals(1, chart.drift().points());
    assertTrue(Double.isNaN(chart.drift().percentPerDay()));
    assertEquals(4, chart.points().size());
    assertEquals(1, chart.marks().size());
    assertEquals(0, chart.middlePercent(), 0.05);
  }

  @Test
  void foretellsWhenToleranceIsLeft() {
    for (int week = 0; week < 5; week++) {
      season.check(7 * week, -0.05 * 7 * week, 0);
    }
    ControlChart chart = season.chart();
    assertEquals(-0.05, chart.drift().percentPerDay(), 1e-9);
    Instant leaves = chart.leaves().orElseThrow();
    assertEquals(60, Duration.between(Season.START, leaves).toHours() / 24.0, 0.5);
    assertTrue(chart.leavesEarliest().orElseThrow().isBefore(leaves));
    String words = chart.words(Bench.ZONE);
    assertTrue(words.contains("−0.35 ±"), words);
  }

  @Test
  void foretellsNothingOfASteadyProbe() {
    for (int week = 0; week < 8; week++) {
      season.check(7 * week, 0.4, 0.3);
    }
    assertEquals(Optional.empty(), season.chart().leaves());
    assertEquals(Loss.NONE_SEEN, season.chart().loss());
  }

  @Test
  void cannotTellFromTwoChecks() {
    season.check(0, 0, 0);
    season.check(7, -0.3, 0);
    assertEquals(Loss.CANT_TELL, season.chart().loss());
    assertEquals(Optional.empty(), season.chart().leaves());
  }

  @Test
  void countsASampleMeasuredWithAnotherMeterButNotPlainWater() {
    season.check(0, 0, 0);
    season.compare(3, ComparisonMade.Type.GRAB_SAMPLE, -1);
    season.compare(4, ComparisonMade.Type.PLAIN_WATER, -5);
    ControlChart chart = season.chart();
    assertEquals(3, chart.points().size());
    assertEquals(2, chart.drift().points());
  }

  @Test
  void reordersNothingWhenTheClockWasSetBack() {
    season.check(10, 1, 0);
    season.check(2, 2, 0);
    season.clean(3);
    season.check(9, 0, 0);
    assertEquals(
        List.of(0, 0, 1), season.chart().points().stream().map(ChartPoint::stretch).toList());
    assertEquals(1, season.chart().points().get(0).percent(), 1e-9);
  }

  private static CheckInterval.Due due(Season season, double day) {
    return CheckInterval.USUAL.due(season.chart(), Season.at(day), Bench.ZONE);
  }

  @Test
  void beginsWeeklyAndLengthensOnEvidence() {
    assertEquals(CheckInterval.Status.NEVER_CHECKED, due(season, 0).status());
    double day = 0;
    Duration last = Duration.ZERO;
    for (int i = 0; i < 8; i++) {
      season.check(day, 0.1, 0.05);
      Duration interval = due(season, day).interval();
      assertTrue(interval.compareTo(last) >= 0);
      last = interval;
      if (i == 0) {
        assertEquals(Duration.ofDays(7), interval);
      }
      day += interval.toDays();
    }
    assertEquals(Duration.ofDays(56), last);
  }

  @Test
  void goesBackToWeeklyAfterAFailAndAfterACleaning() {
    for (int week = 0; week < 6; week++) {
      season.check(7 * week, 0.1, 0.05);
    }
    assertTrue(due(season, 36).interval().toDays() > 7);
    season.check(42, -5, 0.05);
    assertEquals(7, due(season, 42).interval().toDays());
    season.clean(42);
    season.check(43, 0, 0.05);
    assertEquals(7, due(season, 43).interval().toDays());
  }

  @Test
  void doesNotLengthenForAProbeThatMoves() {
    for (int week = 0; week < 4; week++) {
      season.check(7 * week, -0.4 * week, 0.05);
    }
    assertTrue(due(season, 21).interval().toDays() <= 7);
  }

  @Test
  void saysDueAndOverdue() {
    season.check(0, 0, 0);
    assertEquals(CheckInterval.Status.GOOD, due(season, 6.9).status());
    assertEquals(CheckInterval.Status.DUE, due(season, 7.1).status());
    assertEquals(CheckInterval.Status.OVERDUE, due(season, 11).status());
    CheckInterval.Due strange = due(season, -30);
    assertEquals(CheckInterval.Status.DUE, strange.status());
    assertTrue(strange.words().contains("in the future"), strange::words);
  }

  @Test
  void writesASeasonAsATable() {
    season.check(0, 0.5, 0);
    season.clean(1);
    List<List<String>> rows = SeasonLog.rows(season.evidence());
    assertEquals(4, rows.size());
    for (List<String> row : rows) {
      assertEquals(SeasonLog.HEADING.size(), row.size());
    }
    assertEquals("0.5", rows.get(1).get(SeasonLog.HEADING.indexOf("error")));
    assertFalse(rows.get(3).get(4).isEmpty());
  }
}
