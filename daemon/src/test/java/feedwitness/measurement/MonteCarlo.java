package feedwitness.measurement;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.measurement.TemperatureCompensation.Fitted;
import feedwitness.measurement.TemperatureCompensation.Linear;
import feedwitness.measurement.TemperatureCompensation.Outcome;
import java.util.Random;

/**
 * Propagation of distributions (JCGM 101): draws every input from its distribution and lets the
 * formulas themselves work, without sensitivity coefficients. Written from the model, not from the
 * budget.
 */
final class MonteCarlo {
  private final Random random;
  private final int draws;

  MonteCarlo(long seed, int draws) {
    this.random = new Random(seed);
    this.draws = draws;
  }

  /** Standard deviation of the conductivity at 25 °C, mS/cm. */
  double standardUncertainty(Cases.Case given) {
    double mean = 0;
    double squares = 0;
    for (int i = 1; i <= draws; i++) {
      double value = draw(given);
      double away = value - mean;
      mean += away / i;
      squares += away * (value - mean);
    }
    return Math.sqrt(squares / (draws - 1));
  }

  private double draw(Cases.Case given) {
    Basis basis = given.basis();
    InstrumentLimits limits = basis.limits();
    double indicated = given.milliSiemensPerCm();
    double repeats =
        Double.isNaN(limits.repeatabilityPercent()) ? 0.5 : limits.repeatabilityPercent();
    double sensor =
        Double.isNaN(limits.temperatureAccuracyKelvin()) ? 0.5 : limits.temperatureAccuracyKelvin();
    double really =
        indicated
            + within(indicated * limits.accuracyPercent() / 100)
            + within(indicated * repeats / 100)
            + within(limits.resolutionMilliSiemensPerCm() / 2);
    double calibrated = calibrate(basis.calibration(), really);
    if (basis.indicatedAt25()) {
      return calibrated;
    }
    double celsius = given.celsius() + within(sensor);
    return calibrated * factor(basis.compensation(), celsius, given.celsius());
  }

  private double within(double halfWidth) {
    return (2 * random.nextDouble() - 1) * halfWidth;
  }

  private double calibrate(CalibrationCurve curve, double indicated) {
    if (!(curve instanceof CalibrationCurve.Linear linear)) {
      return indicated;
    }
    double one = random.nextGaussian();
    double r = linear.correlation();
    double other = r * one + Math.sqrt(1 - r * r) * random.nextGaussian();
    return (linear.slope() + one * linear.slopeStandardUncertainty()) * indicated
        + linear.offsetMilliSiemensPerCm()
        + other * linear.offsetStandardUncertainty();
  }

  private double factor(TemperatureCompensation compensation, double celsius, double indicatedAt) {
    if (compensation instanceof Linear linear) {
      double alpha = linear.alpha() + random.nextGaussian() * linear.alphaStandardUncertainty();
      return 1 / (1 + alpha * (celsius - 25));
    }
    double relative = 0;
    if (compensation instanceof Fitted fitted) {
      relative = Math.abs(indicatedAt - 25) * fitted.relativeUncertaintyPerKelvin();
    } else if (compensation instanceof TemperatureCompensation.NaturalWater) {
      relative = 0.016 / Math.sqrt(3) * Math.abs(indicatedAt - 25) / 25;
    } else if (compensation instanceof TemperatureCompensation.Kcl) {
      relative = 0.0005;
    }
    Outcome.Factor at = (Outcome.Factor) compensation.at(celsius);
    return at.value() * (1 + relative * random.nextGaussian());
  }
}
