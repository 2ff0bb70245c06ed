package feedwitness.check;

import feedwitness.calibration.StandardSolution;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What was found in one standard.
 *
 * @param standard name on the shelf
 * @param title for people, with the lot
 * @param nominal mS/cm at 25 °C
 * @param reference what an instrument without error would have shown, mS/cm
 * @param indicated mean of what the instrument said, uncorrected, mS/cm
 * @param shown the same with the calibration in use, mS/cm
 * @param celsius mean temperature of the standard
 * @param readings how many make the mean
 * @param doubts line by line
 * @param tolerancePercent half-width, %
 */
public record StandardResult(
    String standard,
    String title,
    double nominal,
    double reference,
    double indicated,
    double shown,
    double celsius,
    int readings,
    List<Doubt> doubts,
    double tolerancePercent) {
  /** Half-width, %: a film of the last liquid on a probe that was rinsed once. */
  static final double RINSE_PERCENT = 0.1;

  public StandardResult {
    doubts = List.copyOf(doubts);
  }

  /** Works a settled reading out, at the temperature the probe itself measures. */
  static Outcome of(
      StandardSolution standard,
      Instrument instrument,
      Settling.Settled settled,
      double tolerancePercent) {
    return of(standard, instrument, settled, tolerancePercent, Optional.empty());
  }

  /** The same; a thermometer in the beaker is believed rather than the probe's own. */
  static Outcome of(
      StandardSolution standard,
      Instrument instrument,
      Settling.Settled settled,
      double tolerancePercent,
      Optional<Thermometer> thermometer) {
    double celsius = thermometer.map(Thermometer::celsius).orElse(settled.celsius());
    Reference.Outcome outcome = Reference.of(standard, instrument, celsius);
    if (outcome instanceof Reference.Unknown unknown) {
      return new NoResult(unknown.words());
    }
    Reference reference = ((Reference.Known) outcome).reference();
    return new Found(
        new StandardResult(
            standard.name(),
            standard.title(),
            standard.nominal(),
            reference.milliSiemensPerCm(),
            settled.mean(),
            instrument.basis().calibration().apply(settled.mean()),
            celsius,
            settled.readings(),
            doubts(standard, instrument, settled, reference, thermometer),
            tolerancePercent));
  }

  private static List<Doubt> doubts(
      StandardSolution standard,
      Instrument instrument,
      Settling.Settled settled,
      Reference reference,
      Optional<Thermometer> thermometer) {
    // Relative to the reference: what the indication contributes goes through the curve's slope.
    double perIndicated =
        100 * instrument.basis().calibration().slope() / reference.milliSiemensPerCm();
    double shown = instrument.basis().calibration().apply(settled.mean());
    // A reference that is wrong by 1 % moves the error by 1 % of what is shown.
    double perReference = Math.abs(shown / reference.milliSiemensPerCm());
    List<Doubt> lines = new ArrayList<>();
    lines.add(
        new Doubt(
            Doubt.Source.CERTIFICATE, standard.certificatePercent() / 2 * perReference, false));
    lines.add(
        new Doubt(Doubt.Source.COURSE, 100 * reference.courseUncertainty() * perReference, false));
    lines.add(
        temperature(
            100 * perReference * Math.abs(reference.relativePerKelvin()), instrument, thermometer));
    if (instrument.at25()) {
      lines.add(
          new Doubt(
              Doubt.Source.COMPENSATION,
              100 * reference.compensationUncertainty() * perReference,
              instrument.alphaAssumed()));
    }
    lines.add(
        new Doubt(
            Doubt.Source.RESOLUTION,
            instrument.resolution() / Math.sqrt(12) * perIndicated,
            Double.isNaN(instrument.limits().resolutionMilliSiemensPerCm())));
    lines.add(
        new Doubt(
            Doubt.Source.SCATTER,
            settled.scatter() / Math.sqrt(settled.readings()) * perIndicated,
            false));
    lines.add(
        new Doubt(
            Doubt.Source.SETTLING, Math.abs(settled.moved()) / Math.sqrt(3) * perIndicated, false));
    lines.add(new Doubt(Doubt.Source.RINSE, RINSE_PERCENT / Math.sqrt(3) * perReference, true));
    return lines;
  }

  private static Doubt temperature(
      double percentPerKelvin, Instrument instrument, Optional<Thermometer> thermometer) {
    return thermometer
        .map(
            it ->
                new Doubt(
                    Doubt.Source.THERMOMETER, percentPerKelvin * it.standardKelvin(), it.assumed()))
        .orElseGet(
            () ->
                new Doubt(
                    Doubt.Source.TEMPERATURE,
                    percentPerKelvin * instrument.temperatureAccuracyKelvin() / Math.sqrt(3),
                    instrument.temperatureAssumed()));
  }

  /** Shown less reference, % of the reference. */
  public double errorPercent() {
    return 100 * (shown / reference - 1);
  }

  /** Standard uncertainty of the error, %. */
  public double standardPercent() {
    return root(doubts);
  }

  /** Twice that: about 95 %. */
  public double expandedPercent() {
    return 2 * standardPercent();
  }

  /** Of this standard alone. */
  public Verdict verdict() {
    return Verdict.of(errorPercent(), expandedPercent(), tolerancePercent);
  }

  /** Standard uncertainty of lines of which one error is in both standards of a check, %. */
  double commonPercent() {
    return root(doubts.stream().filter(doubt -> doubt.source().common()).toList());
  }

  /** Of the lines that belong to this standard alone, %. */
  double ownPercent() {
    return root(doubts.stream().filter(doubt -> !doubt.source().common()).toList());
  }

  private static double root(List<Doubt> lines) {
    return Math.sqrt(
        lines.stream().mapToDouble(line -> line.standardPercent() * line.standardPercent()).sum());
  }

  /** One line for people. */
  public String words() {
    return "%s: %s ± %s, tolerance %s: %s"
        .formatted(
            title,
            Say.error(errorPercent()),
            Say.percent(expandedPercent()),
            Say.percent(tolerancePercent),
            verdict().words());
  }

  /** An expected refusal says why. */
  sealed interface Outcome {}

  record Found(StandardResult result) implements Outcome {}

  record NoResult(String words) implements Outcome {}
}
