package feedwitness.watch.drift;

import feedwitness.site.DriftLimits;
import feedwitness.watch.drift.DriftFinding.Stage;
import java.util.Random;

/**
 * A season of 30 days at event level: 24 irrigation events a day, evenly, of three strengths as
 * Quarry End Nursery gives them; each strays by a standard deviation of 0.9 %, with or without
 * memory of the one before. Something may go wrong between the tenth and the fifteenth day.
 */
final class EventSeason {
  static final int EVENTS_A_DAY = 24;
  static final int DAYS = 30;
  static final double SIGMA = 0.009;
  private static final double[] ADDED = {1.04, 1.49, 0.34};
  private static final double NEVER = Double.NaN;

  /** What goes wrong with the delivered share. */
  enum Fault {
    NONE,
    STEP_3,
    STEP_5,
    RAMP_1
  }

  /** Small changes found before anything was wrong, and how many of them were notices. */
  int falseSeen;

  int falseNotices;

  /**
   * Events from the beginning of the fault to each stage, the event itself counted; NaN if never.
   */
  double seenAfter = NEVER;

  double noticeAfter = NEVER;
  double alarmAfter = NEVER;

  private EventSeason() {}

  static EventSeason play(long seed, double memory, Fault fault) {
    EventSeason season = new EventSeason();
    Random random = new Random(seed);
    InjectorChart chart = new InjectorChart(DriftLimits.USUAL);
    int begins =
        fault == Fault.NONE
            ? Integer.MAX_VALUE
            : EVENTS_A_DAY * (10 + random.nextInt(5)) + random.nextInt(EVENTS_A_DAY);
    double strayed = 0;
    for (int i = 0; i < DAYS * EVENTS_A_DAY; i++) {
      strayed = memory * strayed + Math.sqrt(1 - memory * memory) * SIGMA * random.nextGaussian();
      double seconds = i * 86_400.0 / EVENTS_A_DAY;
      double value = Math.log(ADDED[strength(i)]) + strayed + shift(fault, i - begins);
      if (chart.add(value, seconds) == InjectorChart.Said.SHIFTED) {
        season.note(chart.stage(), i - begins);
      }
    }
    return season;
  }

  private static double shift(Fault fault, int since) {
    if (since < 0) {
      return 0;
    }
    return switch (fault) {
      case NONE -> 0;
      case STEP_3 -> Math.log(0.97);
      case STEP_5 -> Math.log(0.95);
      case RAMP_1 -> Math.log(1 - 0.01 * (since + 1) / EVENTS_A_DAY);
    };
  }

  private static int strength(int event) {
    int day = event / EVENTS_A_DAY % 7;
    int ofDay = event % EVENTS_A_DAY;
    if ((day == 1 || day == 4) && ofDay >= EVENTS_A_DAY - 2) {
      return 2;
    }
    return ofDay >= EVENTS_A_DAY / 2 && ofDay < EVENTS_A_DAY * 3 / 4 ? 1 : 0;
  }

  private void note(Stage stage, int since) {
    boolean notice = stage.compareTo(Stage.NOTICE) >= 0;
    if (since < 0) {
      falseSeen++;
      falseNotices += notice ? 1 : 0;
      return;
    }
    int after = since + 1;
    seenAfter = Double.isNaN(seenAfter) ? after : seenAfter;
    if (notice) {
      noticeAfter = Double.isNaN(noticeAfter) ? after : noticeAfter;
    }
    if (stage == Stage.ALARM) {
      alarmAfter = Double.isNaN(alarmAfter) ? after : alarmAfter;
    }
  }
}
