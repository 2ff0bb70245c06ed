package feedwitness.engine;

import feedwitness.check.Comparisons;
import feedwitness.check.Errors;
import feedwitness.check.ProbeHistory;
import feedwitness.measurement.InstrumentLimits;
import feedwitness.measurement.Measurement;
import feedwitness.measurement.TemperatureCompensation;
import java.util.Optional;

/** What readings are worth when they are held against each other. */
final class Comparing {
  private static final double ROOT3 = Math.sqrt(3);
  private static final double USUAL_REPEATABILITY_PERCENT = 0.5;
  private static final double USUAL_KELVIN = 0.5;
  private static final double USUAL_COEFFICIENT = 0.02;
  private static final double UNCHECKED_PERCENT = 2;
  private static final TemperatureCompensation PLAIN = new TemperatureCompensation.NaturalWater();

  private Comparing() {}

  /**
   * A probe's reading with what differs from one reading to the next: scatter, last digit,
   * temperature. How far off the probe is belongs to what the comparison is to find out.
   */
  static Comparisons.Value25 of(Measurement measurement) {
    double value = measurement.conductivity25MilliSiemensPerCm();
    InstrumentLimits limits = measurement.basis().limits();
    double repeat =
        value * known(limits.repeatabilityPercent(), USUAL_REPEATABILITY_PERCENT) / 100 / ROOT3;
    double digit = known(limits.resolutionMilliSiemensPerCm(), 0) / 2 / ROOT3;
    double kelvin =
        value * USUAL_COEFFICIENT * known(limits.temperatureAccuracyKelvin(), USUAL_KELVIN) / ROOT3;
    return new Comparisons.Value25(
        value, Math.sqrt(repeat * repeat + digit * digit + kelvin * kelvin), celsius(measurement));
  }

  /**
   * The same where plain water is in line and source: referred to 25 °C as natural water is, not as
   * the line's feed is, which is 2 % too little at 14 °C.
   */
  static Comparisons.Value25 plainWater(Measurement measurement) {
    Comparisons.Value25 usual = of(measurement);
    if (measurement.basis().indicatedAt25()
        || !(PLAIN.at(measurement.temperatureCelsius())
            instanceof TemperatureCompensation.Outcome.Factor factor)) {
      return usual;
    }
    double value = factor.value() * measurement.conductivityMilliSiemensPerCm();
    return new Comparisons.Value25(
        value, usual.standard() * value / usual.milliSiemensPerCm(), usual.celsius());
  }

  private static double celsius(Measurement measurement) {
    return measurement.temperatureCelsius();
  }

  /** °C of a probe with its scatter: what is known of its sensor is to be found out. */
  static double standardKelvin() {
    return 0.1 / ROOT3;
  }

  /** A sample with the doubt that its meter's last check left. */
  static Comparisons.Value25 sample(ProbeHistory meter, double milliSiemensPerCm, double celsius) {
    Optional<Errors> left =
        meter.ofPresentProbe().checks().stream()
            .flatMap(check -> check.errors().stream())
            .reduce((a, b) -> b);
    double percent =
        left.map(errors -> errors.at(milliSiemensPerCm))
            .map(node -> Math.hypot(node.percent(), node.standardPercent()))
            .orElse(UNCHECKED_PERCENT);
    return new Comparisons.Value25(milliSiemensPerCm, milliSiemensPerCm * percent / 100, celsius);
  }

  private static double known(double stated, double usual) {
    return Double.isNaN(stated) ? usual : stated;
  }
}
