package feedwitness.engine;

import feedwitness.quantity.ConductivityUnit;
import feedwitness.sample.Reading;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;
import java.util.Locale;
import java.util.Optional;

/** Whether a typed reading can be meant as it was typed. */
final class TypedCheck {
  /** No feed or stock conducts better, mS/cm. */
  private static final double MOST_MILLISIEMENS_PER_CM = 300;

  private static final double COLDEST_CELSIUS = -2;
  private static final double HOTTEST_CELSIUS = 60;

  private TypedCheck() {}

  static Optional<TypedOutcome.Refused> of(TypedReading typed, MeasuringPoint point) {
    Reading reading = typed.reading();
    double milliSiemensPerCm = reading.conductivityMilliSiemensPerCm();
    if (point.probe().isPresent()) {
      return refuse(
          "point",
          "%s has a probe; type hand readings in for a point without one".formatted(point.name()));
    }
    if (!(milliSiemensPerCm >= 0)) {
      return refuse(
          "conductivity", "conductivity is missing or negative; type what the meter shows");
    }
    if (milliSiemensPerCm > MOST_MILLISIEMENS_PER_CM) {
      return refuse("conductivity", tooMuch(reading));
    }
    double celsius = reading.temperatureCelsius();
    if (celsius < COLDEST_CELSIUS || celsius > HOTTEST_CELSIUS) {
      return refuse(
          "temperature",
          String.format(
              Locale.ROOT,
              "temperature %.1f °C is outside %.0f to %.0f °C; check the unit",
              celsius,
              COLDEST_CELSIUS,
              HOTTEST_CELSIUS));
    }
    if (Double.isNaN(celsius)
        && typed.compensated() == TypedReading.Compensated.NOT_AT_ALL
        && !(point.compensation() instanceof CompensationChoice.None)) {
      return refuse(
          "temperature",
          "a reading not referred to 25 °C needs its temperature; type it, or say that the meter"
              + " compensates");
    }
    return Optional.empty();
  }

  private static String tooMuch(Reading reading) {
    String message =
        String.format(
            Locale.ROOT,
            "conductivity %s %s is above %.0f mS/cm, more than any feed or stock",
            reading.conductivity(),
            reading.conductivityUnit().symbol(),
            MOST_MILLISIEMENS_PER_CM);
    double asMicro =
        ConductivityUnit.MICROSIEMENS_PER_CM.toMilliSiemensPerCm(reading.conductivity());
    return reading.conductivityUnit() != ConductivityUnit.MICROSIEMENS_PER_CM
            && asMicro <= MOST_MILLISIEMENS_PER_CM
        ? message + "; did you mean µS/cm?"
        : message + "; check the number and the unit";
  }

  private static Optional<TypedOutcome.Refused> refuse(String field, String message) {
    return Optional.of(new TypedOutcome.Refused(field, message));
  }
}
