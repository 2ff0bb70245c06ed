package feedwitness.measurement;

import feedwitness.quality.Flags;
import feedwitness.quality.PlausibilityTests;
import feedwitness.quality.QualityFlag;
import feedwitness.sample.Indication;
import feedwitness.sample.Reading;
import feedwitness.sample.Sample;

/**
 * Indication → calibration → compensation to 25 °C → uncertainty → flags. Pure: the same sample and
 * basis always make the same measurement.
 */
public final class MeasurementChain {
  private MeasurementChain() {}

  /** Measures a new sample. */
  public static Measurement measure(Sample sample, Basis basis) {
    if (!(sample instanceof Indication indication)) {
      return restore(sample, basis, withDate(sample, Flags.of(QualityFlag.MISSING)));
    }
    Reading reading = indication.reading();
    InstrumentLimits limits = basis.limits();
    Flags flags =
        PlausibilityTests.judge(
            reading.conductivityMilliSiemensPerCm(),
            reading.temperatureCelsius(),
            new PlausibilityTests.Rated(
                limits.minMilliSiemensPerCm(),
                limits.maxMilliSiemensPerCm(),
                limits.minCelsius(),
                limits.maxCelsius()));
    flags = withDate(sample, flags);
    return restore(sample, basis, flags.with(compensationFlags(reading, basis)));
  }

  private static Flags withDate(Sample sample, Flags flags) {
    return sample.stamp().dated() ? flags : flags.with(QualityFlag.UNDATED);
  }

  /** Makes the numbers of a kept sample again; its flags are those that were kept. */
  public static Measurement restore(Sample sample, Basis basis, Flags flags) {
    if (!(sample instanceof Indication indication)) {
      return new Measurement(sample, Double.NaN, Double.NaN, Double.NaN, Double.NaN, flags, basis);
    }
    Reading reading = indication.reading();
    double indicated = reading.conductivityMilliSiemensPerCm();
    double celsius = reading.temperatureCelsius();
    double calibrated = basis.calibration().apply(indicated);
    TemperatureCompensation.Outcome.Factor factor = Applied.factor(celsius, basis);
    if (factor == null) {
      return new Measurement(sample, calibrated, Double.NaN, Double.NaN, celsius, flags, basis);
    }
    double u =
        BudgetLine.combine(
            new Operating(indicated, celsius, factor.value(), factor.perKelvin(), basis));
    return new Measurement(
        sample, calibrated, calibrated * factor.value(), u, celsius, flags, basis);
  }

  private static Flags compensationFlags(Reading reading, Basis basis) {
    if (Applied.factor(reading.temperatureCelsius(), basis) != null) {
      return Flags.NONE;
    }
    return Double.isNaN(reading.temperatureCelsius())
        ? Flags.of(QualityFlag.TEMPERATURE_MISSING)
        : Flags.of(QualityFlag.TEMPERATURE_OUTSIDE_COMPENSATION);
  }
}
