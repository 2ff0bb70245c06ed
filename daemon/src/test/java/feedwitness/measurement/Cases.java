package feedwitness.measurement;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Indication;
import feedwitness.sample.Reading;
import java.util.ArrayList;
import java.util.List;

/**
 * A grid over what nurseries have: rain to stock, cold to hot, each compensation, cheap to good.
 */
final class Cases {
  private static final double NONE = Double.NaN;

  private static final InstrumentLimits[] INSTRUMENTS = {
    new InstrumentLimits(0, 20, 0, 50, 0.001, 1, 0.3, 0.2),
    new InstrumentLimits(0, 20, 0, 50, 0.01, 2, 0.5, NONE),
    new InstrumentLimits(0, 200, 0, 50, 0.1, 0.5, NONE, 0.5),
  };

  private static final CalibrationCurve[] CURVES = {
    new CalibrationCurve.Identity(),
    new CalibrationCurve.Linear(1.03, -0.012, 0.006, 0.009, -0.9),
    new CalibrationCurve.Linear(0.96, 0.02, 0.01, 0, 0),
  };

  private static final TemperatureCompensation[] COMPENSATIONS = {
    new TemperatureCompensation.Linear(0.0188, 0.0006),
    new TemperatureCompensation.Linear(0.0225, 0.0015),
    new TemperatureCompensation.NaturalWater(),
    new TemperatureCompensation.Kcl(),
    new TemperatureCompensation.Fitted("nitrate-feed", 0.0183, 5e-5, -4e-7, 1, 40, 0.0002),
    new TemperatureCompensation.None(),
  };

  private Cases() {}

  record Case(double milliSiemensPerCm, double celsius, Basis basis) {
    Indication indication() {
      return Cases.indication(milliSiemensPerCm, celsius);
    }

    Measurement measured() {
      return MeasurementChain.measure(indication(), basis);
    }
  }

  static List<Case> all() {
    List<Case> all = new ArrayList<>();
    for (InstrumentLimits limits : INSTRUMENTS) {
      for (CalibrationCurve curve : CURVES) {
        for (TemperatureCompensation compensation : COMPENSATIONS) {
          for (double[] at : new double[][] {{0.08, 8}, {0.45, 12}, {1.6, 24.5}, {2.2, 31}}) {
            Basis basis = new Basis(Basis.RULES, "p", false, curve, compensation, limits);
            all.add(new Case(at[0], at[1], basis));
          }
        }
        all.add(
            new Case(1.4, 14, new Basis(Basis.RULES, "p", true, curve, COMPENSATIONS[0], limits)));
      }
    }
    return all;
  }

  static Indication indication(double milliSiemensPerCm, double celsius) {
    return new Indication(
        new PointName("line"),
        new Stamp(1, 1, 0, 0, true),
        new Reading(
            milliSiemensPerCm,
            ConductivityUnit.MILLISIEMENS_PER_CM,
            celsius,
            TemperatureUnit.CELSIUS),
        Indication.Origin.PROBE);
  }
}
