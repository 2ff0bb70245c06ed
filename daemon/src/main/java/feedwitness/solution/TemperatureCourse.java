package feedwitness.solution;

import feedwitness.solution.ConductivityOutcome.Predicted;
import feedwitness.solution.ConductivityOutcome.Refused;

/**
 * How the conductivity of one composition goes with temperature: κ(T)/κ(25) = 1 + a d + b d² + c d³
 * with d = T − 25 °C, over 0 to 45 °C. A cubic meets the model within 0.03 % for feeds and waters;
 * how far it is off is stated and is part of the uncertainty.
 *
 * @param perKelvin a: the temperature coefficient α at 25 °C, 1/K
 * @param perKelvin2 b, 1/K²
 * @param perKelvin3 c, 1/K³
 * @param relativeUncertaintyPerKelvin relative standard uncertainty of the ratio for each kelvin
 *     away from 25 °C, 1/K
 * @param relativeResidual largest relative difference between cubic and model
 */
public record TemperatureCourse(
    double perKelvin,
    double perKelvin2,
    double perKelvin3,
    double relativeUncertaintyPerKelvin,
    double relativeResidual) {

  private static final double REFERENCE = 25;
  private static final int NODES = 19;
  private static final int TERMS = 3;

  /** The course of a composition whose pH follows from its charge balance at each temperature. */
  public static Answer<TemperatureCourse> of(ConductivityModel model, Composition composition) {
    ConductivityOutcome reference = model.predict(composition, REFERENCE);
    if (reference instanceof Refused refused) {
      return new Answer.Unknown<>(refused);
    }
    Predicted at25 = (Predicted) reference;
    double[] off = new double[NODES];
    double[] ratio = new double[NODES];
    for (int i = 0; i < NODES; i++) {
      double celsius =
          ConductivityModel.MIN_CELSIUS
              + i * (ConductivityModel.MAX_CELSIUS - ConductivityModel.MIN_CELSIUS) / (NODES - 1);
      ConductivityOutcome outcome = model.predict(composition, celsius);
      if (outcome instanceof Refused refused) {
        return new Answer.Unknown<>(refused);
      }
      off[i] = celsius - REFERENCE;
      ratio[i] = ((Predicted) outcome).conductivity() / at25.conductivity();
    }
    double[] fit = fit(off, ratio);
    TemperatureCourse course =
        new TemperatureCourse(
            fit[0], fit[1], fit[2], ModelUncertainty.perKelvin(at25.ionicStrength()), 0);
    double residual = 0;
    for (int i = 0; i < NODES; i++) {
      double relative = course.ratio(off[i] + REFERENCE) / ratio[i] - 1;
      residual = Math.max(residual, Math.abs(relative));
    }
    return new Answer.Known<>(
        new TemperatureCourse(
            fit[0], fit[1], fit[2], course.relativeUncertaintyPerKelvin, residual));
  }

  /** Least squares of relative differences, through 1 at 25 °C. */
  private static double[] fit(double[] off, double[] ratio) {
    double[][] normal = new double[TERMS][TERMS];
    double[] right = new double[TERMS];
    // in units of 20 K, so that the normal equations are well scaled
    double unit = 20;
    for (int i = 0; i < off.length; i++) {
      double d = off[i] / unit;
      double[] powers = {d / ratio[i], d * d / ratio[i], d * d * d / ratio[i]};
      for (int r = 0; r < TERMS; r++) {
        right[r] += powers[r] * (ratio[i] - 1) / ratio[i];
        for (int c = 0; c < TERMS; c++) {
          normal[r][c] += powers[r] * powers[c];
        }
      }
    }
    if (!Cholesky.solve(normal, right, TERMS)) {
      throw new IllegalStateException("temperatures of the fit coincide");
    }
    return new double[] {
      right[0] / unit, right[1] / (unit * unit), right[2] / (unit * unit * unit)
    };
  }

  /** κ(T)/κ(25), unitless; {@code celsius} within 0 to 45 °C, else meaningless. */
  public double ratio(double celsius) {
    double d = celsius - REFERENCE;
    return 1 + d * (perKelvin + d * (perKelvin2 + d * perKelvin3));
  }

  /** Slope of {@link #ratio}, 1/K. */
  public double ratioPerKelvin(double celsius) {
    double d = celsius - REFERENCE;
    return perKelvin + d * (2 * perKelvin2 + d * 3 * perKelvin3);
  }

  /** Compensation factor κ(25)/κ(T), unitless. */
  public double factor(double celsius) {
    return 1 / ratio(celsius);
  }

  /** Linear coefficient α for this temperature: κ(T) = κ(25) (1 + α (T − 25)); 1/K. */
  public double alpha(double celsius) {
    double d = celsius - REFERENCE;
    return perKelvin + d * (perKelvin2 + d * perKelvin3);
  }

  /** Relative standard uncertainty of ratio and factor; 0 at 25 °C but for the residual. */
  public double relativeStandardUncertainty(double celsius) {
    return Math.hypot(
        relativeUncertaintyPerKelvin * (celsius - REFERENCE), relativeResidual / Math.sqrt(3));
  }
}
