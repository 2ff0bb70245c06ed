package feedwitness.measurement;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.measurement.Explanation.Stage;
import feedwitness.measurement.Explanation.Step;
import feedwitness.measurement.TemperatureCompensation.Outcome;
import feedwitness.quality.QualityFlag;
import feedwitness.quantity.Octets;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.sample.Reading;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The sentences of an explanation. */
final class ExplanationWords {
  private ExplanationWords() {}

  static List<Step> steps(
      Measurement m, List<Octets> messages, Optional<UncertaintyBudget> budget) {
    List<Step> steps = new ArrayList<>();
    if (m.sample() instanceof Indication indication) {
      steps.add(new Step(Stage.OCTETS, octets(indication, messages)));
      steps.add(new Step(Stage.INDICATION, indication(indication)));
      steps.add(new Step(Stage.BASIS, basis(m.basis())));
      steps.add(new Step(Stage.CORRECTION, correction(m, indication.reading())));
      steps.add(new Step(Stage.COMPENSATION, compensation(m)));
      steps.add(new Step(Stage.UNCERTAINTY, uncertainty(budget)));
    } else {
      Missing missing = (Missing) m.sample();
      steps.add(
          new Step(
              Stage.OCTETS,
              "No reading could be had: %s (%s)."
                  .formatted(missing.cause().words(), missing.detail())));
      steps.add(new Step(Stage.BASIS, basis(m.basis())));
    }
    steps.add(new Step(Stage.FLAGS, flags(m)));
    return steps;
  }

  private static String octets(Indication indication, List<Octets> messages) {
    if (indication.origin() == Indication.Origin.TYPED) {
      return "A person read it off a meter and typed it in; no wire was involved.";
    }
    if (messages.isEmpty()) {
      return "The octets are no longer kept: the service remembers those of each point’s last"
          + " readings while it runs. The indication below is what they said.";
    }
    return "The instrument sent "
        + messages.stream()
            .map(octets -> "[%s] “%s”".formatted(octets.toHex(), octets.toPrintable()))
            .collect(Collectors.joining(", then "))
        + ".";
  }

  private static String indication(Indication indication) {
    Reading reading = indication.reading();
    String conductivity =
        Double.isNaN(reading.conductivity())
            ? "no conductivity"
            : "%s %s"
                .formatted(Digits.of(reading.conductivity()), reading.conductivityUnit().symbol());
    String temperature =
        Double.isNaN(reading.temperature())
            ? "no temperature"
            : "%s %s"
                .formatted(Digits.of(reading.temperature()), reading.temperatureUnit().symbol());
    return "That says %s and %s. This is kept as it is.".formatted(conductivity, temperature);
  }

  private static String basis(Basis basis) {
    return "Device profile %s; calibration: %s; compensation: %s; rules of arithmetic: %d."
        .formatted(
            basis.profile(),
            BasisWords.calibration(basis.calibration()),
            BasisWords.compensation(basis),
            basis.rules());
  }

  private static String correction(Measurement m, Reading reading) {
    double indicated = reading.conductivityMilliSiemensPerCm();
    if (Double.isNaN(indicated)) {
      return "Without a conductivity there is nothing to correct.";
    }
    if (m.basis().calibration() instanceof CalibrationCurve.Linear linear) {
      return "Calibration: %s × %s + %s = %s mS/cm."
          .formatted(
              Digits.of(linear.slope()),
              Digits.of(indicated),
              Digits.of(linear.offsetMilliSiemensPerCm()),
              Digits.of(m.conductivityMilliSiemensPerCm()));
    }
    return "No calibration is recorded, so %s mS/cm stands.".formatted(Digits.of(indicated));
  }

  private static String compensation(Measurement m) {
    Basis basis = m.basis();
    String value = Digits.of(m.conductivity25MilliSiemensPerCm());
    if (Double.isNaN(m.conductivityMilliSiemensPerCm())) {
      return "Without a conductivity there is nothing to refer to 25 °C.";
    }
    if (basis.indicatedAt25()) {
      return "The instrument has referred it to 25 °C itself; doing so again would be wrong, so %s"
          .formatted(value + " mS/cm stands.");
    }
    if (basis.compensation() instanceof TemperatureCompensation.None) {
      return "No compensation is chosen for this point: %s mS/cm is at the water’s own temperature."
          .formatted(value);
    }
    if (Double.isNaN(m.temperatureCelsius())) {
      return "Without a temperature it cannot be referred to 25 °C.";
    }
    String how = BasisWords.compensation(basis);
    Outcome outcome = basis.compensation().at(m.temperatureCelsius());
    if (outcome instanceof Outcome.OutOfRange out) {
      return "It cannot be referred to 25 °C: %s °C is outside %s to %s °C, which this covers (%s)."
          .formatted(
              Digits.of(out.celsius()),
              Digits.of(out.minCelsius()),
              Digits.of(out.maxCelsius()),
              how);
    }
    return "The water has %s °C; referred to 25 °C that is %s × %s = %s mS/cm (%s)."
        .formatted(
            Digits.of(m.temperatureCelsius(), 4),
            Digits.of(m.conductivityMilliSiemensPerCm()),
            Digits.of(((Outcome.Factor) outcome).value()),
            value,
            how);
  }

  private static String uncertainty(Optional<UncertaintyBudget> budget) {
    if (budget.isEmpty()) {
      return "Without a value at 25 °C there is no uncertainty of it.";
    }
    double u = budget.get().standardUncertaintyMilliSiemensPerCm();
    if (Double.isNaN(u)) {
      return "How sure it is cannot be told: the accuracy of the instrument is not known. State it"
          + " in the device profile.";
    }
    String sure =
        "It is sure to ± %s mS/cm, twice the standard uncertainty.".formatted(Digits.of(2 * u, 2));
    return budget.get().contributions().stream()
        .max(Comparator.comparingDouble(line -> Math.abs(line.milliSiemensPerCm())))
        .filter(line -> line.milliSiemensPerCm() != 0)
        .map(line -> sure + " Most of the doubt comes from %s.".formatted(line.source().words()))
        .orElse(sure);
  }

  private static String flags(Measurement m) {
    if (m.flags().isEmpty()) {
      return "No quality test has anything against it.";
    }
    return "Quality tests say: %s."
        .formatted(
            m.flags().list().stream().map(QualityFlag::words).collect(Collectors.joining("; ")));
  }
}
