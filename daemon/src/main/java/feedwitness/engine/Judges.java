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

  private record Seat(JudgeSettings settings, QualityJudge judge) {}

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
    if (seats.size() > site.points().size()) {
      seats.keySet().removeIf(name -> site.points().stream().noneMatch(p -> p.name().equals(name)));
    }
    return new Measurement(
        measurement.sample(),
        measurement.conductivityMilliSiemensPerCm(),
        measurement.conductivity25MilliSiemensPerCm(),
        measurement.standardUncertaintyMilliSiemensPerCm(),
        measurement.temperatureCelsius(),
        measurement.flags().with(judge(measurement, site.points()).judge(seen).now()),
        measurement.basis());
  }

  private QualityJudge judge(Measurement measurement, Iterable<MeasuringPoint> points) {
    boolean drain = false;
    for (MeasuringPoint point : points) {
      drain |=
          point.name().equals(measurement.point()) && point.place() == MeasuringPoint.Place.DRAIN;
    }
    Basis basis = measurement.basis();
    JudgeSettings settings =
        new JudgeSettings(
            basis.limits().resolutionMilliSiemensPerCm(), basis.indicatedAt25(), drain);
    Seat seat = seats.get(measurement.point());
    if (seat == null || !seat.settings().equals(settings)) {
      seat = new Seat(settings, new QualityJudge(settings));
      seats.put(measurement.point(), seat);
    }
    return seat.judge();
  }
}
