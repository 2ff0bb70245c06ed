package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.calibration.StandardCourse;
import feedwitness.calibration.StandardSolution;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The budget of an error against a propagation of distributions (JCGM 101): every input is drawn
 * from its distribution and the beaker itself works, without sensitivities.
 */
class BudgetTest {
  private static final int DRAWS = 60_000;

  @ParameterizedTest
  @CsvSource({
    "low, 21, 1, 0, false", "low, 8, 0.9, 0.02, false", "middle, 25, 1.15, 0, false",
    "high, 30, 1, 0, false", "middle, 17, 0.95, 0, true", "low, 12, 1, 0, true",
    "high, 33, 0.85, 0.1, true", "middle, 3, 1.1, -0.05, false"
  })
  void agreesWithDrawingTheInputs(
      String name, double celsius, double gain, double offset, boolean at25) {
    StandardSolution standard = Bench.SHELF.find(name).orElseThrow();
    Instrument instrument =
        Bench.instrument(new CalibrationCurve.Linear(1.02, -0.004), at25, Double.NaN);
    double shows = gain * right(standard, celsius, at25, 2) + offset;
    Settling.Settled settled =
        new Settling.Settled(shows, celsius, 0.004 * shows, 0.002 * shows, 15, 60);
    StandardResult result =
        assertInstanceOf(
                StandardResult.Found.class, StandardResult.of(standard, instrument, settled, 3))
            .result();
    double drawn = spread(standard, instrument, settled);
    assertEquals(drawn, result.standardPercent(), 0.05 * drawn);
  }

  private static double right(
      StandardSolution standard, double celsius, boolean at25, double percentPerKelvin) {
    double conducts = conducts(standard, celsius).milliSiemensPerCm();
    return at25 ? conducts / (1 + percentPerKelvin / 100 * (celsius - 25)) : conducts;
  }

  private static StandardCourse.Conducts conducts(StandardSolution standard, double celsius) {
    return assertInstanceOf(StandardCourse.Conducts.class, standard.course().at(celsius));
  }

  /** Standard deviation of the error, %. */
  private static double spread(
      StandardSolution standard, Instrument instrument, Settling.Settled settled) {
    Random random = new Random(2008);
    double course = conducts(standard, settled.celsius()).relativeStandardUncertainty();
    double mean = 0;
    double squares = 0;
    for (int i = 1; i <= DRAWS; i++) {
      double bottle =
          (1 + standard.certificatePercent() / 200 * random.nextGaussian())
              * (1 + course * random.nextGaussian())
              * (1 + within(random, StandardResult.RINSE_PERCENT / 100));
      double truth = settled.celsius() + within(random, 0.2);
      double coefficient = instrument.at25() ? 2 + within(random, 0.1) : 2;
      double reference = bottle * right(standard, truth, false, 2);
      if (instrument.at25()) {
        reference /= 1 + coefficient / 100 * (settled.celsius() - 25);
      }
      double indicated =
          settled.mean()
              + settled.scatter() / Math.sqrt(settled.readings()) * random.nextGaussian()
              + within(random, Math.abs(settled.moved()))
              + within(random, instrument.resolution() / 2);
      double shown = instrument.basis().calibration().apply(indicated);
      double error = 100 * (shown / reference - 1);
      double away = error - mean;
      mean += away / i;
      squares += away * (error - mean);
    }
    return Math.sqrt(squares / (DRAWS - 1));
  }

  private static double within(Random random, double halfWidth) {
    return (2 * random.nextDouble() - 1) * halfWidth;
  }
}
