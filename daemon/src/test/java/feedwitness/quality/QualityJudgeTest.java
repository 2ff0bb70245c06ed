package feedwitness.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What a judge makes of a grower's day. */
class QualityJudgeTest {
  private static final int DAY = 86_400;

  /** A point under judgement: readings in, all flags of each out. */
  private static final class Bench {
    private final QualityJudge judge;
    private final double interval;
    private final Random random = new Random(4);
    private final List<Flags> flags = new ArrayList<>();
    private double seconds;

    Bench(JudgeSettings settings, double interval) {
      judge = new QualityJudge(settings);
      this.interval = interval;
    }

    /** A reading; returns its number. */
    int read(double milliSiemensPerCm, double celsius) {
      return read(milliSiemensPerCm, celsius, Double.NaN);
    }

    int read(double milliSiemensPerCm, double celsius, double neighbour) {
      Flags known =
          PlausibilityTests.judge(
              milliSiemensPerCm,
              celsius,
              new PlausibilityTests.Rated(Double.NaN, Double.NaN, Double.NaN, Double.NaN));
      int at = flags.size();
      Judgement said =
          judge.judge(new Observation(at, seconds, milliSiemensPerCm, celsius, neighbour, known));
      flags.add(known.with(said.now()));
      for (Judgement.Earlier one : said.earlier()) {
        boolean stuck =
            one.flags().has(QualityFlag.STUCK) || one.flags().has(QualityFlag.TEMPERATURE_STUCK);
        assertTrue(stuck || at - one.first() <= QualityJudge.REACH, "reaches too far back");
        assertTrue(one.last() < at, "speaks of itself");
        for (int then = (int) one.first(); then <= one.last(); then++) {
          flags.set(then, flags.get(then).withLater(one.flags()));
        }
      }
      seconds += interval;
      return at;
    }

    /** Readings about a level, with the noise of a usual probe, in steps of 1 µS/cm. */
    void about(double milliSiemensPerCm, int number) {
      for (int i = 0; i < number; i++) {
        read(noisy(milliSiemensPerCm), 18 + 0.01 * Math.round(3 * random.nextGaussian()));
      }
    }

    double noisy(double milliSiemensPerCm) {
      double noise = 1 + 0.003 * random.nextGaussian();
      return Math.round(1000 * milliSiemensPerCm * noise) / 1000.0;
    }

    boolean has(int at, QualityFlag flag) {
      return flags.get(at).has(flag);
    }

    /** Readings from {@code from} on with a verdict, that is more than unknown. */
    long verdicts(int from) {
      return flags.subList(from, flags.size()).stream()
          .filter(f -> f.worst().compareTo(Quality.UNKNOWN) > 0)
          .count();
    }
  }

  private static Bench bench(double interval) {
    return new Bench(new JudgeSettings(Double.NaN, true, false), interval);
  }

  @Test
  void knowsNothingAtTheStartAndSaysSo() {
    Bench bench = bench(60);
    for (int i = 0; i < 7; i++) {
      int at = bench.read(bench.noisy(1.8), 18);
      assertEquals(Flags.of(QualityFlag.UNKNOWN), bench.flags.get(at));
    }
    bench.about(1.8, 3);
    assertTrue(bench.flags.get(9).isEmpty());
  }

  @Test
  void flagsTheOneReadingThatIsFarOffAmongTheFirst() {
    Bench bench = bench(900);
    bench.about(1.8, 1);
    int off = bench.read(0.05, 18);
    bench.about(1.8, 8);
    assertTrue(bench.has(off, QualityFlag.IN_AIR));
    assertEquals(1, bench.verdicts(0));
  }

  @Test
  void flagsASpikeOnceItCameBackAtEverySamplingInterval() {
    for (double interval : new double[] {1, 10, 60, 900}) {
      Bench bench = bench(interval);
      bench.about(1.8, 200);
      int spike = bench.read(2.3, 18);
      assertFalse(bench.has(spike, QualityFlag.SPIKE), "not before it came back");
      bench.about(1.8, 3);
      assertTrue(bench.has(spike, QualityFlag.SPIKE), "at " + interval + " s");
      assertEquals(1, bench.verdicts(0), "at " + interval + " s");
    }
  }

  @Test
  void takesAStrongerFeedThatStaysForAFeed() {
    Bench bench = bench(10);
    bench.about(1.2, 400);
    bench.about(1.8, 400);
    assertEquals(0, bench.verdicts(0));
  }

  @Test
  void knowsTheAirEvenBehindAHeldDrop() {
    Bench bench = bench(10);
    bench.about(1.8, 300);
    int drop = bench.read(1.3, 18);
    for (int i = 1; i < 8; i++) {
      bench.read(1.3 - 0.01 * i, 18);
    }
    int air = bench.read(0.004, 18);
    assertTrue(bench.has(air, QualityFlag.IN_AIR));
    assertTrue(bench.has(drop + 7, QualityFlag.IN_AIR));
    bench.about(1.8, 4);
    assertFalse(bench.has(bench.flags.size() - 1, QualityFlag.IN_AIR));
  }

  @Test
  void flagsALowThatIsHeld() {
    Bench bench = bench(60);
    bench.about(1.8, 300);
    int low = bench.flags.size();
    bench.about(0.7, 20);
    assertTrue(bench.has(low, QualityFlag.LOW_HOLD));
    assertTrue(bench.has(low + 19, QualityFlag.LOW_HOLD));
  }

  @Test
  void learnsThatPlainWaterFlowsBetweenWaterings() {
    Bench bench = bench(10);
    for (int watering = 0; watering < 12; watering++) {
      bench.about(1.8, 90);
      bench.about(0.45, 60);
    }
    int next = bench.flags.size();
    for (int watering = 0; watering < 12; watering++) {
      bench.about(1.8, 90);
      bench.about(0.45, 60);
    }
    assertEquals(0, bench.verdicts(next));
  }

  @Test
  void averagesDosingStrokesAndDoesNotFlagThem() {
    Bench bench = bench(1);
    for (int i = 0; i < 3600; i++) {
      bench.read(bench.noisy(1.8 * (i % 4 == 0 ? 1.15 : 0.95)), 18);
    }
    assertTrue(bench.verdicts(0) <= 4, "the first few strokes may look like spikes");
    assertEquals(0, bench.verdicts(90));
    assertTrue(bench.flags.get(3596).isEmpty());
  }

  @Test
  void findsNothingWrongWithAnIdleLine() {
    Bench bench = new Bench(new JudgeSettings(0.01, true, false), 60);
    for (int day = 0; day < 5; day++) {
      for (int minute = 0; minute < 1440; minute++) {
        boolean watering = minute >= 420 && minute < 1080 && minute % 120 < 10;
        double level = watering ? 1.8 * (1 + 0.004 * bench.random.nextGaussian()) : 1.80;
        double celsius = 18 + 4 * Math.sin(minute / 1440.0 * 2 * Math.PI);
        bench.read(Math.round(level * 100) / 100.0, Math.round(celsius * 10) / 10.0);
      }
    }
    assertEquals(0, bench.verdicts(0));
  }

  @Test
  void findsNothingWrongWithADryTrayThatIsMeantToBeDry() {
    Bench bench = new Bench(new JudgeSettings(0.001, true, true), 60);
    tray(bench, 5);
    assertEquals(0, bench.verdicts(0));
  }

  @Test
  void learnsThatATrayIsDryMostOfTheDay() {
    Bench bench = bench(60);
    tray(bench, 2);
    int later = bench.flags.size();
    tray(bench, 5);
    assertEquals(0, bench.verdicts(later));
  }

  private static void tray(Bench bench, int days) {
    for (int day = 0; day < days; day++) {
      for (int minute = 0; minute < 1440; minute++) {
        boolean wet = minute % 720 >= 360 && minute % 720 < 420;
        bench.read(wet ? bench.noisy(2.4) : 0, 18 + 0.1 * (minute % 7));
      }
    }
  }

  @Test
  void flagsAFineSensorThatGivesOneNumberOnly() {
    Bench bench = bench(10);
    bench.about(1.8, 1000);
    for (int i = 0; i < 60; i++) {
      bench.read(1.803, 18 + 0.01 * (i % 3));
    }
    int first = bench.flags.size() - 60;
    assertTrue(bench.has(first, QualityFlag.STUCK) || bench.has(first + 1, QualityFlag.STUCK));
    assertTrue(bench.has(first + 59, QualityFlag.STUCK));
  }

  @Test
  void qualifiesAStuckNumberBackToWhereItWasGivenFirst() {
    Bench bench = bench(60);
    for (int i = 0; i < 6000; i++) {
      bench.read(0.21 + 0.004 * (i / (1 + i % 37) % 2), 18 + 0.1 * (i / 9 % 4));
    }
    int frozen = bench.flags.size();
    for (int i = 0; i < 500; i++) {
      bench.read(0.216, 18.7);
    }
    int told = frozen;
    while (!bench.flags.get(told + 40).has(QualityFlag.STUCK)) {
      told++;
    }
    assertTrue(bench.has(frozen, QualityFlag.STUCK), "from the first on");
    assertTrue(bench.has(frozen, QualityFlag.TEMPERATURE_STUCK), "of both");
    assertTrue(bench.has(frozen + 499, QualityFlag.STUCK));
    assertEquals(0, bench.verdicts(0) - 500, "and nothing before");
  }

  @Test
  void tellsAConductivityThatDoesNotFollowTheTemperature() {
    Bench bench = new Bench(new JudgeSettings(0.01, false, false), 60);
    for (int i = 0; i < 2880; i++) {
      double celsius = dayAndNight(i);
      bench.read(Math.round(180 * (1 + 0.019 * (celsius - 25))) / 100.0, celsius);
    }
    assertEquals(0, bench.verdicts(0));
    int frozen = bench.flags.size();
    for (int i = 0; i < 300; i++) {
      bench.read(1.57, dayAndNight(i));
    }
    assertTrue(bench.has(frozen + 299, QualityFlag.STUCK), "after five hours, not after a day");
    assertTrue(bench.has(frozen, QualityFlag.STUCK), "and all of it");
  }

  private static double dayAndNight(int minute) {
    return Math.round(10 * (18 + 4 * Math.sin(minute / 1440.0 * 2 * Math.PI))) / 10.0;
  }

  @Test
  void leavesACoarseSensorThatIsConstantFor20Hours() {
    Bench bench = bench(60);
    for (int i = 0; i < 20_000; i++) {
      boolean night = i % 1440 < 1200;
      bench.read(night ? 0.21 : 0.21 - 0.004 * bench.random.nextInt(2), 18 + 0.1 * (i % 5));
    }
    assertEquals(0, bench.verdicts(0));
  }

  @Test
  void flagsNoiseThatNoLiquidMakes() {
    Bench bench = bench(10);
    bench.about(1.8, 400);
    int first = bench.flags.size();
    for (int i = 0; i < 40; i++) {
      bench.read(1.8 * (1 + 0.1 * bench.random.nextGaussian()), 18);
    }
    bench.about(1.8, 20);
    long flagged =
        bench.flags.subList(first, first + 40).stream()
            .filter(f -> f.worst().compareTo(Quality.UNKNOWN) > 0)
            .count();
    assertTrue(flagged >= 36, "flagged " + flagged + " of 40");
    assertEquals(0, bench.verdicts(first + 50));
  }

  @Test
  void flagsARiseThatNoMixingMakes() {
    Bench bench = bench(60);
    bench.about(0.6, 200);
    int at = bench.read(20, 18);
    assertTrue(bench.has(at, QualityFlag.RATE_OF_CHANGE));
  }

  @Test
  void flagsATemperatureThatJumps() {
    Bench bench = bench(60);
    bench.about(1.8, 200);
    int at = bench.read(bench.noisy(1.8), 27);
    assertTrue(bench.has(at, QualityFlag.TEMPERATURE_JUMP));
    int zero = bench.read(bench.noisy(1.8), 0);
    assertTrue(bench.has(zero, QualityFlag.TEMPERATURE_IMPOSSIBLE));
  }

  @Test
  void believesATemperatureJumpTheRawConductivityConfirms() {
    Bench bench = new Bench(new JudgeSettings(Double.NaN, false, false), 1);
    bench.about(1.8, 200);
    for (int i = 0; i < 20; i++) {
      bench.read(bench.noisy(1.8 * (1 - 0.019 * 8)), 10 + 0.01 * (i % 4));
    }
    assertEquals(0, bench.verdicts(0));
  }

  @Test
  void flagsATemperatureThatPartsFromItsNeighbour() {
    Bench bench = bench(60);
    for (int i = 0; i < 200; i++) {
      bench.read(bench.noisy(1.8), 18 + 0.01 * (i % 4), 19);
    }
    int last = 0;
    for (int i = 0; i < 40; i++) {
      last = bench.read(bench.noisy(1.8), 18 - 0.2 * i, 19);
    }
    assertTrue(bench.has(last, QualityFlag.TEMPERATURE_UNLIKE_NEIGHBOUR));
  }

  @Test
  void survivesAClockThatStepsBack() {
    Bench bench = bench(60);
    bench.about(1.8, 200);
    bench.seconds -= 10 * DAY;
    bench.about(1.8, 200);
    assertEquals(0, bench.verdicts(0));
  }

  @Test
  void leavesADeadProbeToTheOtherTests() {
    Bench bench = bench(60);
    bench.about(1.8, 200);
    int dead = bench.read(0, 0);
    assertEquals(Flags.of(QualityFlag.BOTH_ZERO), bench.flags.get(dead));
  }
}
