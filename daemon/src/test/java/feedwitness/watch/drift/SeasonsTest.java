package feedwitness.watch.drift;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Twenty seasons at event level; the benchmark plays a thousand. */
class SeasonsTest {
  private static final int SEASONS = 20;

  @Test
  void aQuietSeasonIsQuiet() {
    int seen = 0;
    int notices = 0;
    for (int i = 0; i < SEASONS; i++) {
      EventSeason season = EventSeason.play(100 + i, 0, EventSeason.Fault.NONE);
      seen += season.falseSeen;
      notices += season.falseNotices;
    }
    assertTrue(seen <= SEASONS, "small changes seen by chance: " + seen);
    assertTrue(notices <= 1, "false notices: " + notices);
  }

  @Test
  void aStepOfFivePercentIsNoticedInThreeEvents() {
    int right =
        DriftFigures.seasons(
            SEASONS, 200, 0, EventSeason.Fault.STEP_5, DriftFigures::stepInThreeEvents);
    assertTrue(right >= SEASONS - 1, right + " of " + SEASONS);
  }

  @Test
  void aRampOfOnePercentADayIsSeenInADayAndAHalfAndAlarmedInTime() {
    int seen =
        DriftFigures.seasons(SEASONS, 300, 0, EventSeason.Fault.RAMP_1, DriftFigures::rampSeen);
    int alarmed =
        DriftFigures.seasons(SEASONS, 300, 0, EventSeason.Fault.RAMP_1, DriftFigures::rampAlarmed);
    assertTrue(seen >= SEASONS - 1, seen + " of " + SEASONS);
    assertTrue(alarmed >= SEASONS - 1, alarmed + " of " + SEASONS);
  }

  @Test
  void aSmallerStepThanTheLimitIsSeldomNoticed() {
    int noticed =
        DriftFigures.seasons(
            SEASONS, 400, 0, EventSeason.Fault.STEP_3, season -> season.noticeAfter <= 3);
    assertTrue(noticed <= SEASONS / 4, noticed + " of " + SEASONS);
  }

  @Test
  void nobodySeesAGentleRampInTimeAsOftenIfEventsHaveMemory() {
    double pair = new RampLimit(0.3).pair(720, 4000, 14);
    assertTrue(pair > 0.93 && pair < 0.97, () -> "with all known: " + pair);
  }

  @Test
  void memoryFromEventToEventDoesNotCryWolf() {
    for (double memory : new double[] {0.3, 0.6, 0.9, 0.95}) {
      double run = DriftFigures.chartRunLength(memory, 60, 4);
      assertTrue(run >= 0.7 * 720, () -> "memory " + memory + ": " + run + " events");
    }
  }
}
