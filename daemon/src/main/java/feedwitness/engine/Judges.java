package feedwitness.engine;

import feedwitness.measurement.Basis;
import feedwitness.measurement.Measurement;
import feedwitness.quality.JudgeSettings;
import feedwitness.quality.Observation;
import feedwitness.quality.QualityJudge;
import feedwitness.quantity.PointName;
import feedwitness.sample.Indication;
import feedwitness.sample.Reading;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import java.util.HashMap;
import java.util.Map;

/**
 * A quality judge a point, for what its probe says; readings typed in have no past to be judged by.
 * What a judge says of earlier readings is not kept: the ledger has no place for it yet. Engine
 * thread only.
 */
final class Judges {
  private final Map<PointName, Seat> seats = new HashMap<>();

  private static final class Seat {
    private final JudgeSettings settings;
    private final QualityJudge judge;

    /** What the settings came from; looked at again only when it is another object. */
    private Basis basis;

    private Site site;

    Seat(JudgeSettings settings, Basis basis, Site site) {
      this.settings = settings;
      this.basis = basis;
      this.site = site;
      judge = new QualityJudge(settings);
    }
  }

  /** The measurement with the flags its point's past adds. */
  Measurement judge(Measurement measurement, Site site) {
    if (!(measurement.sample() instanceof Indication indication)
        || indication.origin() != Indication.Origin.PROBE) {
      return measurement;
    }
    Reading reading = indication.reading();
    Observation seen =
        new Observation(
            measurement.stamp().sequence(),
            measurement.stamp().monotonicNanos() / 1e9,
            reading.conductivityMilliSiemensPerCm(),
            reading.temperatureCelsius(),
            Double.NaN,
            measurement.flags());
    return new Measurement(
        measurement.sample(),
        measurement.conductivityMilliSiemensPerCm(),
        measurement.conductivity25MilliSiemensPerCm(),
        measurement.standardUncertaintyMilliSiemensPerCm(),
        measurement.temperatureCelsius(),
        measurement.flags().with(seat(measurement, site).judge.judge(seen).now()),
        measurement.basis());
  }

  @SuppressWarnings("ReferenceEquality") // another object is looked at in full; the same needs none
  private Seat seat(Measurement measurement, Site site) {
    Basis basis = measurement.basis();
    Seat seat = seats.get(measurement.point());
    if (seat != null && seat.basis == basis && seat.site == site) {
      return seat;
    }
    if (seats.size() > site.points().size()) {
      seats.keySet().removeIf(name -> site.points().stream().noneMatch(p -> p.name().equals(name)));
    }
    boolean drain = false;
    for (MeasuringPoint point : site.points()) {
      drain |=
          point.name().equals(measurement.point()) && point.place() == MeasuringPoint.Place.DRAIN;
    }
    JudgeSettings settings =
        new JudgeSettings(
            basis.limits().resolutionMilliSiemensPerCm(), basis.indicatedAt25(), drain);
    if (seat == null || !seat.settings.equals(settings)) {
      seat = new Seat(settings, basis, site);
      seats.put(measurement.point(), seat);
    }
    seat.basis = basis;
    seat.site = site;
    return seat;
  }
}
