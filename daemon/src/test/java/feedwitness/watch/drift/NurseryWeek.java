package feedwitness.watch.drift;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.measurement.Basis;
import feedwitness.measurement.InstrumentLimits;
import feedwitness.measurement.Measurement;
import feedwitness.measurement.MeasurementChain;
import feedwitness.measurement.TemperatureCompensation;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Indication;
import feedwitness.sample.Reading;
import feedwitness.simulate.Nursery;
import feedwitness.simulate.NurseryOptions;
import feedwitness.simulate.Schedule;
import feedwitness.simulate.Truth;
import feedwitness.simulate.Wire;
import feedwitness.site.DriftLimits;
import feedwitness.site.FeedLine;
import feedwitness.site.Mixer;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The virtual nursery at full signal, its probes measured and handed to a drift watch. */
final class NurseryWeek {
  static final ZoneId ZONE = ZoneId.of("Europe/London");
  static final PointName SOURCE = new PointName("source");
  static final PointName LINE = new PointName("line");
  private static final int EVERY = 5;
  private static final Basis SOURCE_BASIS = basis(new TemperatureCompensation.NaturalWater());
  private static final Basis LINE_BASIS = basis(new TemperatureCompensation.Linear(0.0188, 0.0006));

  private final Nursery nursery;
  private final List<DriftFinding> findings = new ArrayList<>();
  private DriftWatch watch;
  private boolean sourceDead;
  private long sequence;

  NurseryWeek(long seed, Schedule schedule, FeedLine line) {
    nursery = new Nursery(new NurseryOptions(seed, ZONE, schedule), local(9, 0, 0));
    watch = new DriftWatch(line);
  }

  /** A local time in June 2025; the 9th and the 16th are Mondays. */
  static Instant local(int day, int hour, int minute) {
    return ZonedDateTime.of(2025, 6, day, hour, minute, 0, 0, ZONE).toInstant();
  }

  private static Basis basis(TemperatureCompensation compensation) {
    return new Basis(
        Basis.RULES,
        "nursery",
        false,
        new CalibrationCurve.Identity(),
        compensation,
        new InstrumentLimits(0, 20, 0, 50, 0.001, 1, 0.3));
  }

  /** The glasshouse line as a grower would configure it. */
  static FeedLine glasshouse(List<Double> strengths) {
    return new FeedLine(
        new PointName("glasshouse"),
        "Glasshouse line",
        Optional.of(SOURCE),
        Optional.empty(),
        LINE,
        Optional.empty(),
        new Mixer.Injector(80),
        strengths,
        Double.NaN,
        DriftLimits.USUAL);
  }

  Nursery nursery() {
    return nursery;
  }

  DriftWatch watch() {
    return watch;
  }

  List<DriftFinding> findings() {
    return findings;
  }

  void killSource() {
    sourceDead = true;
  }

  /** Lets it run on, a reading every five seconds from each probe. */
  void until(Instant end) {
    while (nursery.now().isBefore(end)) {
      nursery.advanceTo(nursery.now().plusSeconds(EVERY));
      Truth truth = nursery.truth();
      if (!sourceDead && !nursery.isUnplugged(Wire.SOURCE)) {
        findings.addAll(watch.take(measured(SOURCE, truth.source(), SOURCE_BASIS)));
      }
      if (!nursery.isUnplugged(Wire.BUS)) {
        findings.addAll(watch.take(measured(LINE, truth.line(), LINE_BASIS)));
      }
    }
  }

  private Measurement measured(PointName point, Truth.Point probe, Basis basis) {
    return MeasurementChain.measure(
        new Indication(
            point,
            stamp(),
            new Reading(
                probe.indicated(),
                ConductivityUnit.MILLISIEMENS_PER_CM,
                probe.indicatedCelsius(),
                TemperatureUnit.CELSIUS),
            Indication.Origin.PROBE),
        basis);
  }

  Stamp stamp() {
    long millis = nursery.now().toEpochMilli();
    return new Stamp(1, ++sequence, Duration.ofMillis(millis).toNanos(), millis, true);
  }

  /** Goes on from its state, as after a restart. */
  void restart() {
    watch = DriftWatch.resume(watch.feedLine(), watch.state());
  }

  void note(LineChange change) {
    findings.addAll(watch.note(change, stamp()));
  }
}
