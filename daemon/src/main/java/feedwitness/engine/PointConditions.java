package feedwitness.engine;

import feedwitness.alarm.AlarmKey;
import feedwitness.alarm.AlarmKind;
import feedwitness.alarm.Condition;
import feedwitness.alarm.Limit;
import feedwitness.alarm.PointKinds;
import feedwitness.alarm.Presence;
import feedwitness.measurement.Measurement;
import feedwitness.quality.Quality;
import feedwitness.quality.QualityFlag;
import feedwitness.quantity.Stamp;
import feedwitness.sample.Missing;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.StrengthOf;
import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What a point's latest measurement means for its alarms. Pure; conductivities are mS/cm at 25 °C.
 *
 * @param latest last sample of this start of the service (or typed by a person); null if none came
 * @param band what holds now
 * @param source strength of the water before feed; NaN if it is not known
 * @param settling whether what was turned on has not reached the probe yet
 * @param started when the service began to listen
 * @param silence after so long without anything heard there is no data
 * @param active whether a condition stood when last looked at, for deadbands
 */
record PointConditions(
    MeasuringPoint point,
    @Nullable Measurement latest,
    BandNow band,
    double source,
    boolean settling,
    Stamp started,
    Duration silence,
    Stamp now,
    Predicate<AlarmKey> active) {
  private static final int SILENT_INTERVALS = 10;

  /** Of these a value may come and go without the liquid having had it. */
  private static final Set<QualityFlag> NO_VALUE =
      EnumSet.of(QualityFlag.SPIKE, QualityFlag.ERRATIC, QualityFlag.TEMPERATURE_MISSING);

  private static final Set<QualityFlag> FAULTS =
      EnumSet.of(
          QualityFlag.BOTH_ZERO,
          QualityFlag.TEMPERATURE_IMPOSSIBLE,
          QualityFlag.CONDUCTIVITY_MISSING,
          QualityFlag.ERRATIC,
          QualityFlag.STUCK,
          QualityFlag.TEMPERATURE_ERRATIC,
          QualityFlag.TEMPERATURE_STUCK);

  private static final Set<QualityFlag> TEMPERATURE_FAULTS =
      EnumSet.of(
          QualityFlag.BOTH_ZERO,
          QualityFlag.TEMPERATURE_IMPOSSIBLE,
          QualityFlag.TEMPERATURE_JUMP,
          QualityFlag.TEMPERATURE_ERRATIC);

  /** All conditions of the point. */
  List<Condition> all() {
    Stream<Condition> ofProbe =
        point.probe().isPresent() ? Stream.of(noData(), inAir(), fault()) : Stream.of();
    return Stream.concat(
            ofProbe,
            Stream.of(
                conductivity(PointKinds.CONDUCTIVITY_HIGH, Limit.Side.ABOVE),
                conductivity(PointKinds.CONDUCTIVITY_LOW, Limit.Side.BELOW),
                temperature(PointKinds.TEMPERATURE_HIGH, Limit.Side.ABOVE),
                temperature(PointKinds.TEMPERATURE_LOW, Limit.Side.BELOW)))
        .toList();
  }

  private String name() {
    return point.name().text();
  }

  /** The latest reading, unless it is none or too old to be true of now. */
  private Optional<Measurement> reading() {
    Measurement last = latest;
    if (last == null || last.sample() instanceof Missing || silent(last)) {
      return Optional.empty();
    }
    return Optional.of(last);
  }

  /** A typed reading counts until the next one is typed. */
  private boolean silent(Measurement last) {
    return point.probe().isPresent() && quiet(last.stamp()).compareTo(patience()) > 0;
  }

  private Duration quiet(Stamp since) {
    return Duration.ofNanos(now.monotonicNanos() - since.monotonicNanos());
  }

  private Duration patience() {
    return point
        .probe()
        .map(mount -> mount.profile().interval().multipliedBy(SILENT_INTERVALS))
        .filter(intervals -> intervals.compareTo(silence) > 0)
        .orElse(silence);
  }

  private Condition noData() {
    Measurement last = latest;
    Presence presence;
    String words;
    if (last == null) {
      presence = quiet(started).compareTo(patience()) > 0 ? Presence.ACTIVE : Presence.UNKNOWN;
      words = "%s: nothing came since the service started".formatted(name());
    } else if (last.sample() instanceof Missing missing) {
      boolean refused = missing.cause() == Missing.Cause.INSTRUMENT_REFUSED;
      presence = refused ? Presence.UNKNOWN : Presence.ACTIVE;
      words = "%s: %s (%s)".formatted(name(), missing.cause().words(), missing.detail());
    } else {
      presence = silent(last) ? Presence.ACTIVE : Presence.CLEAR;
      words =
          presence == Presence.CLEAR
              ? "%s: readings come".formatted(name())
              : "%s: nothing for more than %d s".formatted(name(), patience().toSeconds());
    }
    return Condition.plain(name(), PointKinds.NO_DATA, presence, words);
  }

  private Condition inAir() {
    Presence presence =
        reading().map(m -> presence(m.flags().has(QualityFlag.IN_AIR))).orElse(Presence.UNKNOWN);
    return Condition.plain(
            name(),
            PointKinds.IN_AIR,
            presence,
            "%s: the probe reads %s"
                .formatted(
                    name(),
                    presence == Presence.ACTIVE ? "as if in air" : "as it does in solution"))
        .suppressed(band.idle());
  }

  private Condition fault() {
    Measurement last = latest;
    if (last != null
        && last.sample() instanceof Missing missing
        && missing.cause() == Missing.Cause.INSTRUMENT_REFUSED) {
      return Condition.plain(
          name(),
          PointKinds.INSTRUMENT_FAULT,
          Presence.ACTIVE,
          "%s: %s (%s)".formatted(name(), missing.cause().words(), missing.detail()));
    }
    Optional<Measurement> reading = reading();
    String faults =
        reading.stream()
            .flatMap(m -> m.flags().list().stream())
            .filter(FAULTS::contains)
            .map(QualityFlag::words)
            .collect(Collectors.joining("; "));
    Presence presence = reading.map(m -> presence(!faults.isEmpty())).orElse(Presence.UNKNOWN);
    return Condition.plain(
        name(),
        PointKinds.INSTRUMENT_FAULT,
        presence,
        "%s: %s".formatted(name(), faults.isEmpty() ? "no fault" : faults));
  }

  private static Presence presence(boolean there) {
    return there ? Presence.ACTIVE : Presence.CLEAR;
  }

  private Condition conductivity(AlarmKind kind, Limit.Side side) {
    boolean above = side == Limit.Side.ABOVE;
    double setpoint = above ? band.conductivity().high() : band.conductivity().low();
    double total = settling ? Double.NaN : reading().map(this::total).orElse(Double.NaN);
    boolean added = band.of() == StrengthOf.ADDED;
    double value = added ? total - source : total;
    Presence presence =
        judge(kind, new Limit(setpoint, band.conductivity().deadband(), side), value);
    String what = added ? " added by feed" : "";
    String whose =
        band.why().isEmpty() || band.why().equals("configured") ? "" : " of " + band.why();
    return new Condition(
            name(),
            kind,
            presence,
            value,
            setpoint,
            "mS/cm",
            words(String.format(Locale.ROOT, "%.2f mS/cm%s", value, what), side, setpoint, value)
                + (Double.isNaN(setpoint)
                    ? ""
                    : String.format(Locale.ROOT, " %.2f mS/cm%s", setpoint, whose)),
            Optional.empty())
        .suppressed(band.idle());
  }

  /** How a value lies to its limit, without the limit's own number. */
  private String words(String shown, Limit.Side side, double setpoint, double value) {
    boolean above = side == Limit.Side.ABOVE;
    String limit = above ? "high limit" : "low limit";
    if (Double.isNaN(setpoint)) {
      return "%s: %s; there is no %s now".formatted(name(), shown, limit);
    }
    boolean beyond = above ? value > setpoint : value < setpoint;
    String how = above ? "above" : "below";
    return "%s: %s is %s the %s".formatted(name(), shown, beyond ? how : "back within", limit);
  }

  private double total(Measurement reading) {
    boolean usable =
        reading.flags().worst() != Quality.BAD
            && reading.flags().list().stream().noneMatch(NO_VALUE::contains);
    return usable ? reading.conductivity25MilliSiemensPerCm() : Double.NaN;
  }

  private Condition temperature(AlarmKind kind, Limit.Side side) {
    boolean above = side == Limit.Side.ABOVE;
    double setpoint = above ? band.temperature().high() : band.temperature().low();
    double value =
        reading()
            .filter(m -> m.flags().list().stream().noneMatch(TEMPERATURE_FAULTS::contains))
            .map(Measurement::temperatureCelsius)
            .orElse(Double.NaN);
    Presence presence =
        judge(kind, new Limit(setpoint, band.temperature().deadband(), side), value);
    return new Condition(
        name(),
        kind,
        presence,
        value,
        setpoint,
        "°C",
        words(String.format(Locale.ROOT, "%.1f °C", value), side, setpoint, value)
            + (Double.isNaN(setpoint) ? "" : String.format(Locale.ROOT, " %.1f °C", setpoint)),
        Optional.empty());
  }

  private Presence judge(AlarmKind kind, Limit limit, double value) {
    return limit.judge(value, active.test(new AlarmKey(name(), kind.code())));
  }
}
