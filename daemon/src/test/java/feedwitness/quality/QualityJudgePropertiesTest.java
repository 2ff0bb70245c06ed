package feedwitness.quality;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;

/** A judge has an answer to whatever an instrument may send, and speaks of nothing to come. */
class QualityJudgePropertiesTest {
  private static final PlausibilityTests.Rated NOT_STATED =
      new PlausibilityTests.Rated(Double.NaN, Double.NaN, Double.NaN, Double.NaN);

  record Seen(double passed, double milliSiemensPerCm, double celsius, double neighbour) {}

  @Provide
  Arbitrary<List<Seen>> readings() {
    Arbitrary<Double> odd =
        Arbitraries.of(
            Double.NaN,
            Double.POSITIVE_INFINITY,
            Double.NEGATIVE_INFINITY,
            0.0,
            -0.0,
            -1.0,
            -127.0,
            85.0,
            1e300,
            Double.MIN_VALUE);
    Arbitrary<Double> usual = Arbitraries.of(1.8, 1.801, 1.81, 1.79, 0.4, 0.002, 2.3);
    Arbitrary<Double> warm = Arbitraries.of(18.0, 18.1, 17.9, 24.0);
    Arbitrary<Double> passed = Arbitraries.of(1.0, 60.0, 900.0, 0.0, -5.0, 90_000.0);
    Arbitrary<Seen> sound = Combinators.combine(passed, usual, warm, warm).as(Seen::new);
    Arbitrary<Seen> broken = Combinators.combine(passed, odd, odd, odd).as(Seen::new);
    return Arbitraries.frequencyOf(Tuple.of(8, sound), Tuple.of(1, broken))
        .list()
        .ofMinSize(50)
        .ofMaxSize(600);
  }

  @Property(tries = 150)
  void answersWhateverComes(@ForAll("readings") List<Seen> readings, @ForAll boolean at25) {
    QualityJudge judge = new QualityJudge(new JudgeSettings(Double.NaN, at25, false));
    double seconds = 0;
    for (int i = 0; i < readings.size(); i++) {
      Seen seen = readings.get(i);
      seconds += seen.passed();
      Flags known = PlausibilityTests.judge(seen.milliSiemensPerCm(), seen.celsius(), NOT_STATED);
      Judgement said =
          judge.judge(
              new Observation(
                  i, seconds, seen.milliSiemensPerCm(), seen.celsius(), seen.neighbour(), known));
      for (Judgement.Earlier one : said.earlier()) {
        assertTrue(0 <= one.first() && one.first() <= one.last() && one.last() < i);
      }
    }
  }
}
