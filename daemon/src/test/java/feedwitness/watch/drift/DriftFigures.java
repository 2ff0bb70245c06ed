package feedwitness.watch.drift;

import java.util.Random;
import java.util.function.Predicate;

/** Figures that tests assert on few repeats and the benchmark states on many. Fixed seeds. */
final class DriftFigures {
  /**
   * One-sided optimum delay (Moustakides) at 0.5, 1, 2, 3 σ for 43 200 residuals a false signal.
   */
  static final double[] OPTIMUM = {60.8, 18.0, 5.29, 2.65};

  static final double[] SHIFTS = {0.5, 1, 2, 3};
  static final int MONTH_OF_MINUTES = 43_200;

  private DriftFigures() {}

  /** Mean residuals to a false signal of the plain pair, independent residuals. */
  static double falseRunLength(double clip, int repeats, long seed) {
    Random random = new Random(seed);
    CusumPair pair = new CusumPair(clip, MONTH_OF_MINUTES, CusumPair.EVEN);
    double sum = 0;
    for (int i = 0; i < repeats; i++) {
      pair.reset();
      do {
        sum++;
      } while (pair.add(random.nextGaussian(), sum) == 0);
    }
    return sum / repeats;
  }

  /** Mean delay in steady state after a shift of so many standard deviations. */
  static double delay(double clip, double shift, int repeats, long seed) {
    Random random = new Random(seed);
    CusumPair pair = new CusumPair(clip, MONTH_OF_MINUTES, CusumPair.EVEN);
    double sum = 0;
    for (int i = 0; i < repeats; i++) {
      pair.reset();
      for (int before = 0; before < 200; before++) {
        if (pair.add(random.nextGaussian(), before) != 0) {
          pair.reset();
        }
      }
      do {
        sum++;
      } while (pair.add(shift + random.nextGaussian(), sum) == 0);
    }
    return sum / repeats;
  }

  /** Mean events to a false finding of any stage, from the first event on, of the whole chart. */
  static double chartRunLength(double memory, int repeats, long seed) {
    Random random = new Random(seed);
    double sum = 0;
    for (int i = 0; i < repeats; i++) {
      InjectorChart chart = new InjectorChart(feedwitness.site.DriftLimits.USUAL);
      double strayed = EventSeason.SIGMA * random.nextGaussian();
      InjectorChart.Said said;
      int events = 0;
      do {
        said = chart.add(strayed, events++ * 3600.0);
        strayed =
            memory * strayed
                + Math.sqrt(1 - memory * memory) * EventSeason.SIGMA * random.nextGaussian();
      } while (said != InjectorChart.Said.SHIFTED && events < 100_000);
      sum += events;
    }
    return sum / repeats;
  }

  /** How many of the seasons, seeds from {@code first}, are as wanted. */
  static int seasons(
      int count,
      long first,
      double memory,
      EventSeason.Fault fault,
      Predicate<EventSeason> wanted) {
    int right = 0;
    for (int i = 0; i < count; i++) {
      right += wanted.test(EventSeason.play(first + i, memory, fault)) ? 1 : 0;
    }
    return right;
  }

  static boolean stepInThreeEvents(EventSeason season) {
    return season.noticeAfter <= 3;
  }

  /** Seen a day and a half after its beginning. */
  static boolean rampSeen(EventSeason season) {
    return season.seenAfter <= 1.5 * EventSeason.EVENTS_A_DAY;
  }

  /** Alarmed half a day after 10 %, which it reaches after ten days. */
  static boolean rampAlarmed(EventSeason season) {
    return season.alarmAfter <= 10.5 * EventSeason.EVENTS_A_DAY;
  }
}
