package feedwitness.engine;

import feedwitness.measurement.Basis;
import feedwitness.measurement.Measurement;
import feedwitness.quality.Flags;
import feedwitness.quality.JudgeSettings;
import feedwitness.quality.Judgement;
import feedwitness.quality.Neighbours;
import feedwitness.quality.Observation;
import feedwitness.quality.Qualification;
import feedwitness.quality.QualityFlag;
import feedwitness.quality.QualityJudge;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.sample.Indication;
import feedwitness.sample.Reading;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A quality judge a point, for what its probe says; readings typed in have no past to be judged by.
 * Judges know of each other only what temperature the probes say. Engine thread only.
 */
final class Judges {
  /** Why a temperature is not to be believed; that neighbours disagree does not say which errs. */
  private static final Flags NO_TEMPERATURE =
      Flags.of(
          QualityFlag.BOTH_ZERO,
          QualityFlag.TEMPERATURE_IMPOSSIBLE,
          QualityFlag.TEMPERATURE_JUMP,
          QualityFlag.TEMPERATURE_ERRATIC,
          QualityFlag.TEMPERATURE_STUCK);

  private final Map<PointName, Seat> seats = new HashMap<>();
  private final Neighbours neighbours = new Neighbours();

  /**
   * A reading judged.
   *
   * @param measurement with the flags its point's past adds
   * @param earlier what it gives reason to say of readings before it
   */
  record Judged(Measurement measurement, List<Qualification> earlier) {
    Judged {
      earlier = List.copyOf(earlier);
    }
  }

  private static final class Seat {
    private final JudgeSettings settings;
    private final QualityJudge judge;
    private final Neighbours.Probe probe;

    /** What the settings came from; looked at again only when it is another object. */
    private Basis basis;

    private Site site;

    Seat(JudgeSettings settings, Neighbours.Probe probe, Basis basis, Site site) {
      this.settings = settings;
      this.probe = probe;
      this.basis = basis;
      this.site = site;
      judge = new QualityJudge(settings);
    }
  }

  /** Judges the next measurement of its point. */
  Judged judge(Measurement measurement, Site site) {
    if (!(measurement.sample() instanceof Indication indication)
        || indication.origin() != Indication.Origin.PROBE) {
      return new Judged(measurement, List.of());
    }
    Seat seat = seat(measurement, site);
    Reading reading = indication.reading();
    double seconds = measurement.stamp().monotonicNanos() / 1e9;
    double celsius = reading.temperatureCelsius();
    Judgement said =
        seat.judge.judge(
            new Observation(
                measurement.stamp().sequence(),
                seconds,
                reading.conductivityMilliSiemensPerCm(),
                celsius,
                seat.probe.neighbour(seconds, celsius),
                measurement.flags()));
    Flags flags = measurement.flags().with(said.now());
    seat.probe.heard(seconds, flags.hasAny(NO_TEMPERATURE) ? Double.NaN : celsius);
    return new Judged(
        measurement.with(flags), said.earlier().isEmpty() ? List.of() : earlier(said, measurement));
  }

  private static List<Qualification> earlier(Judgement said, Measurement measurement) {
    Stamp stamp = measurement.stamp();
    return said.earlier().stream()
        .map(
            one ->
                new Qualification(
                    measurement.point(),
                    stamp.boot(),
                    one.first(),
                    one.last(),
                    one.flags(),
                    stamp.wall()))
        .toList();
  }

  @SuppressWarnings("ReferenceEquality") // another object is looked at in full; the same needs none
  private Seat seat(Measurement measurement, Site site) {
    Basis basis = measurement.basis();
    Seat seat = seats.get(measurement.point());
    if (seat != null && seat.basis == basis && seat.site == site) {
      return seat;
    }
    forgetOthers(site);
    JudgeSettings settings =
        new JudgeSettings(
            basis.limits().resolutionMilliSiemensPerCm(),
            basis.indicatedAt25(),
            isDrain(measurement.point(), site));
    if (seat == null || !seat.settings.equals(settings)) {
      Neighbours.Probe probe = seat == null ? neighbours.join() : seat.probe;
      seat = new Seat(settings, probe, basis, site);
      seats.put(measurement.point(), seat);
    }
    seat.basis = basis;
    seat.site = site;
    return seat;
  }

  private static boolean isDrain(PointName name, Site site) {
    for (MeasuringPoint point : site.points()) {
      if (point.name().equals(name)) {
        return point.place() == MeasuringPoint.Place.DRAIN;
      }
    }
    return false;
  }

  /** Points that are no longer in the configuration. */
  private void forgetOthers(Site site) {
    seats
        .entrySet()
        .removeIf(
            seat -> {
              boolean gone = site.points().stream().noneMatch(p -> p.name().equals(seat.getKey()));
              if (gone) {
                neighbours.leave(seat.getValue().probe);
              }
              return gone;
            });
  }
}
