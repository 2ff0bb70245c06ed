package feedwitness.measurement;

import feedwitness.solution.Iso7888;
import feedwitness.solution.KclStandard;

/**
 * Refers a conductivity to 25 °C. Temperature is an influence quantity, not part of calibration:
 * apply after the calibration curve. Temperatures are °C, factors unitless.
 */
public sealed interface TemperatureCompensation {

  /** Reference temperature of every measurement, °C. */
  double REFERENCE_CELSIUS = 25;

  /** Factor for a conductivity measured at {@code celsius}. Never extrapolates; NaN is no data. */
  Outcome at(double celsius);

  /**
   * Relative standard uncertainty of the factor itself at {@code celsius}, unitless, ≥ 0: how well
   * this way of compensating is known to fit the solution, not how well the temperature is known.
   */
  double relativeStandardUncertainty(double celsius);

  /** A temperature without data is an expected outcome, not an exception. */
  sealed interface Outcome {
    /** {@code perKelvin}: slope of the factor in 1/K, for the uncertainty budget. */
    record Factor(double value, double perKelvin) implements Outcome {}

    record OutOfRange(double celsius, double minCelsius, double maxCelsius) implements Outcome {}
  }

  /** The value stands as it is: already at 25 °C, or wanted at its own temperature. */
  record None() implements TemperatureCompensation {
    @Override
    public Outcome at(double celsius) {
      return new Outcome.Factor(1, 0);
    }

    @Override
    public double relativeStandardUncertainty(double celsius) {
      return 0;
    }
  }

  /**
   * Factor 1 / (1 + α(T − 25)) over 0 to 50 °C.
   *
   * @param alpha 1/K, 0 to 0.04 exclusive of both ends
   * @param alphaStandardUncertainty 1/K, ≥ 0
   */
  record Linear(double alpha, double alphaStandardUncertainty) implements TemperatureCompensation {
    static final double MIN_CELSIUS = 0;
    static final double MAX_CELSIUS = 50;

    public Linear {
      if (!(alpha > 0 && alpha < 0.04) || !(alphaStandardUncertainty >= 0)) {
        throw new IllegalArgumentException(
            "alpha %s ± %s 1/K is outside 0 to 0.04".formatted(alpha, alphaStandardUncertainty));
      }
    }

    @Override
    public Outcome at(double celsius) {
      if (!(celsius >= MIN_CELSIUS && celsius <= MAX_CELSIUS)) {
        return new Outcome.OutOfRange(celsius, MIN_CELSIUS, MAX_CELSIUS);
      }
      double factor = 1 / (1 + alpha * (celsius - REFERENCE_CELSIUS));
      return new Outcome.Factor(factor, -alpha * factor * factor);
    }

    @Override
    public double relativeStandardUncertainty(double celsius) {
      double away = celsius - REFERENCE_CELSIUS;
      return Math.abs(away) * alphaStandardUncertainty / (1 + alpha * away);
    }
  }

  /** ISO 7888, natural waters; within 1.6 % of a hard water over the table (half-width). */
  record NaturalWater() implements TemperatureCompensation {
    @Override
    public Outcome at(double celsius) {
      if (!(celsius >= Iso7888.MIN_CELSIUS && celsius <= Iso7888.MAX_CELSIUS)) {
        return new Outcome.OutOfRange(celsius, Iso7888.MIN_CELSIUS, Iso7888.MAX_CELSIUS);
      }
      double ratio = Iso7888.ratio(celsius);
      return new Outcome.Factor(1 / ratio, -Iso7888.ratioPerKelvin(celsius) / (ratio * ratio));
    }

    @Override
    public double relativeStandardUncertainty(double celsius) {
      return 0.016 / Math.sqrt(3) * Math.abs(celsius - REFERENCE_CELSIUS) / REFERENCE_CELSIUS;
    }
  }

  /** Potassium chloride standards, NIST table. */
  record Kcl() implements TemperatureCompensation {
    @Override
    public Outcome at(double celsius) {
      if (!(celsius >= KclStandard.MIN_CELSIUS && celsius <= KclStandard.MAX_CELSIUS)) {
        return new Outcome.OutOfRange(celsius, KclStandard.MIN_CELSIUS, KclStandard.MAX_CELSIUS);
      }
      double ratio = KclStandard.ratio(celsius);
      return new Outcome.Factor(1 / ratio, -KclStandard.ratioPerKelvin(celsius) / (ratio * ratio));
    }

    @Override
    public double relativeStandardUncertainty(double celsius) {
      return 0.0005;
    }
  }
}
