package feedwitness.measurement;

import feedwitness.solution.ConductivityModel;
import feedwitness.solution.Iso7888;
import feedwitness.solution.KclStandard;
import feedwitness.solution.TemperatureCourse;

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

  /**
   * κ(T)/κ(25) = 1 + a d + b d² + c d³ with d = T − 25, fitted by whoever knows the solution: its
   * recipe, or a measured course of temperature. The coefficients travel in the basis, so a number
   * stands whatever becomes of the model they came from.
   *
   * @param label what was fitted, 1 to 64 of a–z, 0–9, dot, dash, underscore
   * @param perKelvin a, 1/K
   * @param perKelvin2 b, 1/K²
   * @param perKelvin3 c, 1/K³
   * @param minCelsius lower end of the fit, °C
   * @param maxCelsius upper end, °C
   * @param relativeUncertaintyPerKelvin relative standard uncertainty of the factor for each kelvin
   *     away from 25 °C, 1/K, ≥ 0
   */
  record Fitted(
      String label,
      double perKelvin,
      double perKelvin2,
      double perKelvin3,
      double minCelsius,
      double maxCelsius,
      double relativeUncertaintyPerKelvin)
      implements TemperatureCompensation {
    private static final double STEP_KELVIN = 0.5;

    /**
     * Checks that the ratio is above 0.1 and rises over the whole fit.
     *
     * @throws IllegalArgumentException naming what is unusable
     */
    public Fitted {
      if (!label.matches("[a-z0-9._-]{1,64}")) {
        throw new IllegalArgumentException(
            "label '%s' of a compensation is not 1 to 64 of a-z, 0-9, dot, dash, underscore"
                .formatted(label));
      }
      if (!(minCelsius < maxCelsius && minCelsius >= -10 && maxCelsius <= 110)) {
        throw new IllegalArgumentException(
            "compensation %s over %s to %s °C is no range within -10 to 110 °C"
                .formatted(label, minCelsius, maxCelsius));
      }
      if (!(relativeUncertaintyPerKelvin >= 0 && relativeUncertaintyPerKelvin < 0.1)) {
        throw new IllegalArgumentException(
            "uncertainty %s 1/K of compensation %s is outside 0 to 0.1"
                .formatted(relativeUncertaintyPerKelvin, label));
      }
      for (double t = minCelsius; t < maxCelsius + STEP_KELVIN; t += STEP_KELVIN) {
        double d = Math.min(t, maxCelsius) - REFERENCE_CELSIUS;
        if (!(1 + d * (perKelvin + d * (perKelvin2 + d * perKelvin3)) > 0.1
            && perKelvin + d * (2 * perKelvin2 + d * 3 * perKelvin3) > 0)) {
          throw new IllegalArgumentException(
              "compensation %s does not rise from above 0.1 at %s °C"
                  .formatted(label, Math.min(t, maxCelsius)));
        }
      }
    }

    /**
     * The compensation of a recipe: what the ionic model says of its composition, 0 to 45 °C.
     *
     * @param label names the recipe within a basis
     */
    public static Fitted of(String label, TemperatureCourse course) {
      return new Fitted(
          label,
          course.perKelvin(),
          course.perKelvin2(),
          course.perKelvin3(),
          ConductivityModel.MIN_CELSIUS,
          ConductivityModel.MAX_CELSIUS,
          course.relativeUncertaintyPerKelvin());
    }

    @Override
    public Outcome at(double celsius) {
      if (!(celsius >= minCelsius && celsius <= maxCelsius)) {
        return new Outcome.OutOfRange(celsius, minCelsius, maxCelsius);
      }
      double d = celsius - REFERENCE_CELSIUS;
      double ratio = 1 + d * (perKelvin + d * (perKelvin2 + d * perKelvin3));
      double slope = perKelvin + d * (2 * perKelvin2 + d * 3 * perKelvin3);
      return new Outcome.Factor(1 / ratio, -slope / (ratio * ratio));
    }

    @Override
    public double relativeStandardUncertainty(double celsius) {
      return Math.abs(celsius - REFERENCE_CELSIUS) * relativeUncertaintyPerKelvin;
    }
  }
}
