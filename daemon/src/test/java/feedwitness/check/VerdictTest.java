package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.calibration.StandardCourse;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pass, fail, can't tell. */
class VerdictTest {

  @ParameterizedTest
  @CsvSource({
    "0, 1.2, 3, PASS", "-1.8, 1.2, 3, PASS", "1.9, 1.2, 3, CANT_TELL", "-3, 1.2, 3, CANT_TELL",
    "-4.2, 1.2, 3, CANT_TELL", "-4.3, 1.2, 3, FAIL", "0, 4, 3, CANT_TELL", "0, NaN, 3, CANT_TELL",
    "NaN, 1, 3, CANT_TELL"
  })
  void decidesWithAllTheDoubtOnBothSides(
      double error, double expanded, double tolerance, Verdict expected) {
    assertEquals(expected, Verdict.of(error, expanded, tolerance));
  }

  @Test
  void isAsGoodAsTheWorstStandard() {
    assertEquals(Verdict.FAIL, Verdict.together(List.of(Verdict.PASS, Verdict.FAIL)));
    assertEquals(Verdict.CANT_TELL, Verdict.together(List.of(Verdict.PASS, Verdict.CANT_TELL)));
    assertEquals(Verdict.PASS, Verdict.together(List.of(Verdict.PASS, Verdict.PASS)));
    assertEquals(Verdict.CANT_TELL, Verdict.together(List.of()));
  }

  /**
   * Beakers as they may be: bottle, course, temperature sensor and rinse drawn from what the budget
   * says of them. A probe beyond its tolerance passes, and one within fails, in at most one of
   * forty checks.
   */
  @ParameterizedTest
  @CsvSource({"-3.001, PASS", "3.001, PASS", "-2.999, FAIL", "2.999, FAIL"})
  void isSeldomWrong(double truePercent, Verdict wrong) {
    Random random = new Random(106);
    int draws = 4000;
    int mistaken = 0;
    for (int i = 0; i < draws; i++) {
      double celsius = 18 + 8 * random.nextDouble();
      double sensor = celsius + 0.2 * (2 * random.nextDouble() - 1);
      double bottle = (1 + 0.005 * random.nextGaussian()) * (1 + 0.002 * random.nextGaussian());
      double rinse = 1 + 0.001 * (2 * random.nextDouble() - 1);
      double shows =
          (1 + truePercent / 100) * bottle * rinse * conducts(celsius)
              + 0.001 * (random.nextDouble() - 0.5);
      Settling.Settled settled = new Settling.Settled(shows, sensor, 0, 0, 30, 60);
      StandardResult result =
          assertInstanceOf(
                  StandardResult.Found.class,
                  StandardResult.of(Bench.LOW, Bench.plain(), settled, 3))
              .result();
      mistaken += result.verdict() == wrong ? 1 : 0;
    }
    assertTrue(mistaken <= draws / 40, "mistaken " + mistaken);
    assertTrue(mistaken > draws / 200, "never mistaken at the very limit: the doubt is overdone");
  }

  private static double conducts(double celsius) {
    return assertInstanceOf(StandardCourse.Conducts.class, Bench.LOW.course().at(celsius))
        .milliSiemensPerCm();
  }
}
