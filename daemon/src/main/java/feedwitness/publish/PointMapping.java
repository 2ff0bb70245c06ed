package feedwitness.publish;

import feedwitness.engine.AlarmDesk;
import feedwitness.engine.PointStatus;
import feedwitness.measurement.Measurement;
import feedwitness.quality.Flags;
import feedwitness.quality.QualityFlag;
import feedwitness.quantity.Stamp;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.site.MeasuringPoint;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** From a point's status to its JSON. */
final class PointMapping {
  private PointMapping() {}

  static List<PointJson> map(List<PointStatus> points, AlarmDesk alarms, Instant now) {
    return points.stream().map(point -> map(point, alarms, now)).toList();
  }

  static PointJson map(PointStatus status, AlarmDesk alarms, Instant now) {
    MeasuringPoint point = status.point();
    Optional<Measurement> reading = status.lastReading();
    Optional<Measurement> latest = status.latest();
    Flags flags = latest.map(Measurement::flags).orElse(Flags.NONE);
    return new PointJson(
        point.name().text(),
        point.title(),
        Codes.of(point.place()),
        point
            .probe()
            .map(p -> new PointJson.ProbeJson(p.link().text(), p.profile().name(), p.unit()))
            .orElse(null),
        latest.map(PointMapping::state).orElse("waiting"),
        Numbers.conductivity(number(reading, Measurement::conductivity25MilliSiemensPerCm)),
        Numbers.conductivity(number(reading, Measurement::conductivityMilliSiemensPerCm)),
        Numbers.conductivity(
            2 * number(reading, Measurement::standardUncertaintyMilliSiemensPerCm)),
        Numbers.temperature(number(reading, Measurement::temperatureCelsius)),
        time(reading),
        date(reading).map(at -> Numbers.seconds(age(at, now))).orElse(null),
        codes(flags),
        flags.list().stream().map(QualityFlag::words).toList(),
        latest.map(m -> Codes.of(m.flags().worst())).orElse("unknown"),
        reading.map(PointMapping::origin).orElse(null),
        latest.map(m -> m.stamp().id()).orElse(null),
        latest.map(m -> missing(m, reading)).orElse(null),
        reading.map(m -> BasisMapping.map(m.basis())).orElse(null),
        BandJson.of(alarms, point.name()));
  }

  static List<String> codes(Flags flags) {
    return flags.list().stream().map(QualityFlag::code).toList();
  }

  private static String state(Measurement latest) {
    return latest.sample() instanceof Missing ? "missing" : "reading";
  }

  private static double number(Optional<Measurement> from, ToNumber what) {
    return from.isPresent() ? what.of(from.get()) : Double.NaN;
  }

  /** A sample without a trusted clock has no date yet. */
  private static Optional<Instant> date(Optional<Measurement> measurement) {
    return measurement.map(Measurement::stamp).filter(Stamp::dated).map(Stamp::wall);
  }

  private static @Nullable String time(Optional<Measurement> measurement) {
    return date(measurement).map(Numbers::time).orElse(null);
  }

  /** A wall clock set back must not show a reading from the future. */
  private static Duration age(Instant at, Instant now) {
    return now.isBefore(at) ? Duration.ZERO : Duration.between(at, now);
  }

  private static @Nullable String origin(Measurement reading) {
    return reading.sample() instanceof Indication indication
        ? indication.origin().name().toLowerCase(Locale.ROOT)
        : null;
  }

  private static PointJson.@Nullable MissingJson missing(
      Measurement latest, Optional<Measurement> lastReading) {
    return latest.sample() instanceof Missing missing
        ? new PointJson.MissingJson(
            Codes.of(missing.cause()), missing.cause().words(), missing.detail(), time(lastReading))
        : null;
  }

  @FunctionalInterface
  private interface ToNumber {
    double of(Measurement measurement);
  }
}
