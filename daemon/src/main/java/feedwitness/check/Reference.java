package feedwitness.check;

import feedwitness.calibration.StandardCourse;
import feedwitness.calibration.StandardSolution;

/**
 * What an instrument without error would show in a standard.
 *
 * @param milliSiemensPerCm mS/cm: at the measured temperature, or as the instrument itself would
 *     refer it to 25 °C
 * @param relativePerKelvin change of the error with an error of the temperature sensor, 1/K
 * @param courseUncertainty relative standard uncertainty of what the standard conducts
 * @param compensationUncertainty relative standard uncertainty from an unknown coefficient
 */
record Reference(
    double milliSiemensPerCm,
    double relativePerKelvin,
    double courseUncertainty,
    double compensationUncertainty) {

  /** An expected refusal says why. */
  sealed interface Outcome {}

  record Known(Reference reference) implements Outcome {}

  record Unknown(String words) implements Outcome {}

  static Outcome of(StandardSolution standard, Instrument instrument, double celsius) {
    if (Double.isNaN(celsius)) {
      return new Unknown(
          "the temperature of %s is not known; measure it in the beaker and type it in"
              .formatted(standard.title()));
    }
    if (standard.course().at(celsius) instanceof StandardCourse.Conducts at) {
      return new Known(of(at, instrument, celsius));
    }
    return new Unknown(
        "%s °C is outside the %s to %s °C over which %s is known; bring standard and probe to room temperature"
            .formatted(
                Say.number(celsius, 3),
                Say.number(standard.course().minCelsius(), 3),
                Say.number(standard.course().maxCelsius(), 3),
                standard.title()));
  }

  private static Reference of(StandardCourse.Conducts at, Instrument instrument, double celsius) {
    double conducts = at.milliSiemensPerCm();
    if (!instrument.at25()) {
      return new Reference(conducts, at.relativePerKelvin(), at.relativeStandardUncertainty(), 0);
    }
    double away = celsius - 25;
    double divisor = 1 + instrument.alpha() * away;
    double unknown =
        instrument.alphaAssumed()
            ? Math.abs(away)
                * Instrument.USUAL_DOUBT_PERCENT_PER_KELVIN
                / 100
                / Math.sqrt(3)
                / divisor
            : 0;
    // A sensor error reaches the display and our reference both; the display's part cancels.
    return new Reference(
        conducts / divisor, at.relativePerKelvin(), at.relativeStandardUncertainty(), unknown);
  }
}
