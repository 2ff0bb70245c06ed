package feedwitness.engine;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.ledger.History;
import feedwitness.measurement.Basis;
import feedwitness.measurement.CompensationSource;
import feedwitness.measurement.Measurement;
import feedwitness.measurement.TemperatureCompensation;
import feedwitness.quantity.PointName;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The latest of each point, written by the engine and read by many. */
final class Board {
  private Site site;
  private CompensationSource compensation;
  private final Map<PointName, Basis> bases = new HashMap<>();
  private final Map<PointName, CalibrationCurve> curves = new HashMap<>();
  private final Map<PointName, Measurement> latest = new HashMap<>();
  private final Map<PointName, Measurement> lastReading = new HashMap<>();

  /** Starts from what history knows. */
  Board(Site site, History history) {
    this.site = site;
    this.compensation = new SiteCompensation(site);
    follow(site);
    for (MeasuringPoint point : site.points()) {
      history.latest(point.name()).ifPresent(measurement -> latest.put(point.name(), measurement));
      history.latestReading(point.name()).ifPresent(m -> lastReading.put(point.name(), m));
    }
  }

  /** A changed site; points that are gone are forgotten. */
  synchronized void follow(Site changed) {
    site = changed;
    compensation = new SiteCompensation(changed);
    bases.clear();
    changed
        .points()
        .forEach(
            point ->
                bases.put(
                    point.name(),
                    calibrated(
                        point.name(),
                        Bases.ofProbe(point, SiteCompensation.of(point.compensation())))));
    latest.keySet().retainAll(bases.keySet());
    lastReading.keySet().retainAll(bases.keySet());
  }

  private Basis calibrated(PointName point, Basis usual) {
    CalibrationCurve curve = curves.get(point);
    return curve == null || curve.equals(usual.calibration()) ? usual : Bases.with(usual, curve);
  }

  /** What the probe of a point says is calibrated by another curve from now on. */
  synchronized void calibrate(PointName point, CalibrationCurve curve) {
    curves.put(point, curve);
    bases.computeIfPresent(point, (name, usual) -> calibrated(name, usual));
  }

  synchronized Site site() {
    return site;
  }

  /** For what a probe says at a time; empty for a point that was just removed. */
  synchronized Optional<Basis> basis(PointName point, Instant at) {
    Basis usual = bases.get(point);
    if (usual == null) {
      return Optional.empty();
    }
    TemperatureCompensation now = compensation.of(point, at);
    return Optional.of(usual.compensation().equals(now) ? usual : Bases.with(usual, now));
  }

  /** For what a person typed. */
  synchronized Basis typedBasis(TypedReading typed, Instant at) {
    return Bases.ofTyped(typed.compensated(), compensation.of(typed.point(), at));
  }

  synchronized void post(Measurement measurement) {
    latest.put(measurement.point(), measurement);
    if (!Double.isNaN(measurement.conductivityMilliSiemensPerCm())) {
      lastReading.put(measurement.point(), measurement);
    }
  }

  synchronized List<PointStatus> all() {
    return site.points().stream().map(this::status).toList();
  }

  synchronized Optional<PointStatus> one(PointName name) {
    return site.points().stream()
        .filter(point -> point.name().equals(name))
        .findFirst()
        .map(this::status);
  }

  private PointStatus status(MeasuringPoint point) {
    return new PointStatus(
        point,
        Optional.ofNullable(latest.get(point.name())),
        Optional.ofNullable(lastReading.get(point.name())));
  }
}
