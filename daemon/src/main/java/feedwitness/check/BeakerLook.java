package feedwitness.check;

import feedwitness.calibration.StandardSolution;
import java.util.Optional;

/** One probe in one standard: what it reads, how warm that is, and what follows. */
final class BeakerLook {
  private final Instrument instrument;
  private final double tolerancePercent;

  private Settling settling;
  private Optional<Thermometer> thermometer = Optional.empty();
  private double sensor = Double.NaN;

  BeakerLook(Instrument instrument, double tolerancePercent) {
    this.instrument = instrument;
    this.tolerancePercent = tolerancePercent;
    this.settling = fresh();
  }

  private Settling fresh() {
    return Settling.begin(instrument.resolution(), instrument.repeatabilityPercent());
  }

  /** Forgets the readings, not the thermometer. */
  void restart() {
    settling = fresh();
  }

  void thermometer(Thermometer reading) {
    thermometer = Optional.of(reading);
  }

  Settling.State reading(ProbeReading reading) {
    settling =
        settling.with(
            new Settling.Reading(
                reading.seconds(), reading.milliSiemensPerCm(), reading.celsius()));
    return settling.state();
  }

  Settling.State state() {
    return settling.state();
  }

  /** What somebody reads off a display at rest, as if it had settled. */
  Settling.Settled typed(double milliSiemensPerCm, double celsius) {
    double scatter = instrument.repeatabilityPercent() / 100 / Math.sqrt(3) * milliSiemensPerCm;
    return new Settling.Settled(milliSiemensPerCm, celsius, scatter, 0, 1, 0);
  }

  StandardResult.Outcome result(StandardSolution standard, Settling.Settled settled) {
    sensor = settled.celsius();
    return StandardResult.of(standard, instrument, settled, tolerancePercent, thermometer);
  }

  /** As an instrument that does not compensate would have shown it, mS/cm. */
  double atItsTemperature(StandardResult result) {
    return instrument.at25()
        ? result.shown() * (1 + instrument.alpha() * (result.celsius() - 25))
        : result.shown();
  }

  /** The thermometer in the beaker is a check of the probe's own as well. */
  Optional<ComparisonMade> sensor(Entry entry) {
    return thermometer
        .filter(it -> !Double.isNaN(sensor))
        .map(
            it ->
                new ComparisonMade(
                    entry,
                    ComparisonMade.Type.THERMOMETER,
                    "thermometer in the beaker",
                    sensor,
                    0,
                    it.celsius(),
                    it.standardKelvin(),
                    instrument.temperatureAccuracyKelvin(),
                    ""));
  }
}
