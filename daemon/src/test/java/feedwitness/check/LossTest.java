package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Slow loss of sensitivity on seeded series of weekly checks: never too early, never late. */
class LossTest {
  private static final int HEALTHY = 400;
  private static final int SERIES = 100;
  private static final int CHECKS = 26;

  @Test
  void findsNoLossOnHealthyProbes() {
    int sure = 0;
    int failed = 0;
    for (int seed = 0; seed < HEALTHY; seed++) {
      Season season = new Season(seed);
      double constant = (seed % 5 - 2) * 0.3;
      for (int week = 0; week < CHECKS; week++) {
        season.check(7 * week, constant, Season.REPEAT);
      }
      ControlChart chart = season.chart();
      for (int week = 1; week <= CHECKS; week++) {
        sure += Loss.of(chart.points().subList(0, week)) == Loss.SURE ? 1 : 0;
      }
      failed += (int) chart.points().stream().filter(p -> p.verdict() == Verdict.FAIL).count();
    }
    assertEquals(0, sure);
    assertEquals(0, failed);
  }

  /** 0.1 to 0.4 % a day, as fouling does; checked weekly. */
  @ParameterizedTest
  @CsvSource({"0.1, 4, 6", "0.2, 3, 5", "0.3, 3, 4", "0.4, 3, 4"})
  void findsALossAtTheFirstChecksThatCanTell(double percentPerDay, int typical, int latest) {
    List<Integer> at = new ArrayList<>();
    for (int seed = 0; seed < SERIES; seed++) {
      Season season = new Season(1000 + seed);
      int found = 0;
      for (int week = 0; week < CHECKS && found == 0; week++) {
        season.check(7 * week, -percentPerDay * 7 * week, Season.REPEAT);
        found = season.chart().loss() == Loss.SURE ? week + 1 : 0;
      }
      at.add(found);
    }
    at.sort(null);
    assertTrue(at.get(0) > 0, "some were never found");
    assertEquals(typical, at.get(SERIES / 2), "median");
    assertTrue(at.get(SERIES - 1) <= latest, at::toString);
  }

  /**
   * Without scatter the verdict falls at the first check at which the sum, worked out from its
   * definition, has reached the limit, and not at an earlier one.
   */
  @ParameterizedTest
  @CsvSource({"0.05", "0.1", "0.2", "0.4"})
  void fallsAtTheFirstCheckAtWhichTheSumIsReached(double percentPerDay) {
    Season season = new Season(1);
    double sum = 0;
    double total = 0;
    for (int week = 0; week < CHECKS; week++) {
      double error = -percentPerDay * 7 * week;
      if (week > 0) {
        double z = (error - total / week) / (Season.REPEAT * Math.sqrt(1 + 1.0 / week));
        sum = Math.max(0, sum - z - 0.75);
      }
      total += error;
      season.check(7 * week, error, 0);
      assertEquals(sum >= 7, season.chart().loss() == Loss.SURE, "week " + week);
    }
    assertTrue(sum >= 7);
  }

  /**
   * The verdict on tolerance falls at the first check whose error exceeds it with all its doubt.
   */
  @ParameterizedTest
  @CsvSource({"0.1", "0.2", "0.4"})
  void failsAtTheFirstCheckBeyondToleranceAndDoubt(double percentPerDay) {
    double expanded = 2 * Math.hypot(0.5, Season.REPEAT);
    Season season = new Season(1);
    for (int week = 0; week < CHECKS; week++) {
      double error = -percentPerDay * 7 * week;
      season.check(7 * week, error, 0);
      List<ChartPoint> points = season.chart().points();
      Verdict said = points.get(points.size() - 1).verdict();
      assertEquals(-error - expanded > 3, said == Verdict.FAIL, "week " + week);
      assertEquals(-error + expanded <= 3, said == Verdict.PASS, "week " + week);
    }
  }

  @Test
  void allowsForAnotherLot() {
    Season season = new Season(3);
    for (int week = 0; week < 6; week++) {
      season.check(7 * week, 0, 0.05);
    }
    List<ChartPoint> points = new ArrayList<>(season.chart().points());
    for (int i = 0; i < 3; i++) {
      ChartPoint last = points.get(points.size() - 1);
      // A fresh bottle that is 0.8 % stronger, within twice its certificate's uncertainty.
      points.add(
          new ChartPoint(
              last.at().plusSeconds(7 * 86_400),
              last.source(),
              -0.8,
              last.standardPercent(),
              last.repeatPercent(),
              Verdict.PASS,
              0,
              "another lot"));
    }
    assertTrue(Loss.of(points) != Loss.SURE);
  }
}
