package feedwitness.engine;

import feedwitness.check.CheckDesk;
import feedwitness.check.CheckEvidence;
import feedwitness.check.CheckSubject;
import feedwitness.check.Comparisons;
import feedwitness.check.Entry;
import feedwitness.check.Thermometer;
import feedwitness.measurement.Measurement;
import feedwitness.quality.Quality;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import java.util.Optional;

/** Holds what a probe reads now against what somebody typed. Guarded by its owner. */
final class CheckComparisons {
  private static final double THERMOMETER_TOLERANCE_KELVIN = 0.5;

  private final LiveView view;
  private final CheckPlan plan;
  private final CheckDesk desk;
  private final PlaceMarks marks;

  CheckComparisons(LiveView view, CheckPlan plan, CheckDesk desk, PlaceMarks marks) {
    this.view = view;
    this.plan = plan;
    this.desk = desk;
    this.marks = marks;
  }

  Comparisons.Outcome sample(
      CheckSubject probe,
      String meter,
      double milliSiemensPerCm,
      double celsius,
      String who,
      Stamp now) {
    Optional<Measurement> last = current(probe, now);
    if (last.isEmpty()) {
      return silent(probe);
    }
    CheckSubject instrument = CheckSubject.meter(new PointName(meter));
    return Comparisons.grabSample(
        new Entry("", probe, now.wall(), who),
        Comparing.of(last.get()),
        meter,
        Comparing.sample(desk.history(instrument), milliSiemensPerCm, celsius),
        desk.lastVerdict(instrument),
        plan.tolerance(probe.name()));
  }

  Comparisons.Outcome thermometer(
      CheckSubject probe,
      String thermometer,
      double celsius,
      double accuracyKelvin,
      String who,
      Stamp now) {
    Optional<Measurement> last = current(probe, now);
    return last.isEmpty()
        ? silent(probe)
        : Comparisons.thermometer(
            new Entry("", probe, now.wall(), who),
            last.get().temperatureCelsius(),
            Comparing.standardKelvin(),
            thermometer,
            celsius,
            new Thermometer(celsius, accuracyKelvin).standardKelvin(),
            THERMOMETER_TOLERANCE_KELVIN);
  }

  /** The last reading, if the probe is heard now, in its place and without a fault. */
  private Optional<Measurement> current(CheckSubject probe, Stamp now) {
    return view.point(probe.name())
        .filter(status -> probe.kind() == CheckSubject.Kind.PROBE)
        .flatMap(PointStatus::latest)
        .filter(m -> m.stamp().boot() == now.boot())
        .filter(m -> !Double.isNaN(m.conductivity25MilliSiemensPerCm()))
        .filter(m -> m.flags().worst().compareTo(Quality.BAD) < 0)
        .filter(m -> marks.isInItsPlace(m.point()));
  }

  private static Comparisons.Refused silent(CheckSubject probe) {
    return new Comparisons.Refused(
        probe.kind() == CheckSubject.Kind.METER
            ? "%s is a meter; name the probe beside which the sample was taken".formatted(probe)
            : "%s gives no usable reading of its place now; wait until it does, then compare"
                .formatted(probe));
  }

  /** What is to be kept of an outcome. */
  static Optional<CheckEvidence> made(Comparisons.Outcome outcome) {
    return outcome instanceof Comparisons.Made made
        ? Optional.of(made.evidence())
        : Optional.empty();
  }
}
