package feedwitness.publish;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.calibration.StandardCourse;
import feedwitness.calibration.StandardShelf;
import feedwitness.calibration.StandardSolution;
import feedwitness.check.CheckInterval;
import feedwitness.engine.AlarmWatch;
import feedwitness.engine.CheckPlan;
import feedwitness.engine.CheckWatch;
import feedwitness.engine.FeedLineWatch;
import feedwitness.engine.LiveView;
import feedwitness.engine.PointStatus;
import feedwitness.engine.ServiceState;
import feedwitness.engine.TypedOutcome;
import feedwitness.engine.TypedReading;
import feedwitness.ledger.Afterthoughts;
import feedwitness.ledger.Bucket;
import feedwitness.ledger.DurableMark;
import feedwitness.ledger.History;
import feedwitness.measurement.Measurement;
import feedwitness.measurement.MeasurementChain;
import feedwitness.quality.Flags;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.Octets;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.sample.Reading;
import feedwitness.sample.Sample;
import feedwitness.site.Site;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;

/**
 * Quarry End in memory: everything that was measured is kept, listeners are told at once, and the
 * clock stands where the test puts it. Measurements are made by the real chain.
 */
final class FixtureNursery implements LiveView, History {
  static final Instant START = Instant.parse("2026-06-01T08:00:00Z");
  static final PointName SOURCE = new PointName("source");
  static final PointName TANK = new PointName("tank");
  static final PointName LINE = new PointName("line");
  static final PointName DRAIN = new PointName("drain");

  private final List<Measurement> kept = new ArrayList<>();
  private final List<Consumer<Measurement>> listeners = new CopyOnWriteArrayList<>();
  private final List<AlarmWatch> watches = new CopyOnWriteArrayList<>();
  private final List<CheckWatch> benches = new CopyOnWriteArrayList<>();
  private final List<FeedLineWatch> lineWatches = new CopyOnWriteArrayList<>();
  private final List<CalibrationCurve> calibrated = new CopyOnWriteArrayList<>();
  private final List<String> trouble = new CopyOnWriteArrayList<>();
  private final Map<Stamp, List<Octets>> messages = new ConcurrentHashMap<>();
  private volatile Instant now = START;

  /** A probe says something; the clock does not move. */
  Measurement indicate(PointName point, double milliSiemensPerCm, double celsius) {
    return keep(
        new Indication(
            point, stamp(true), reading(milliSiemensPerCm, celsius), Indication.Origin.PROBE));
  }

  /** The same before the clock could be trusted. */
  Measurement indicateUndated(PointName point, double milliSiemensPerCm, double celsius) {
    return keep(
        new Indication(
            point, stamp(false), reading(milliSiemensPerCm, celsius), Indication.Origin.PROBE));
  }

  Measurement miss(PointName point, Missing.Cause cause, String detail) {
    return keep(new Missing(point, stamp(true), cause, detail));
  }

  void wait(Duration duration) {
    now = now.plus(duration);
  }

  void inTrouble(String words) {
    trouble.add(words);
  }

  int listeners() {
    return listeners.size();
  }

  private static Reading reading(double milliSiemensPerCm, double celsius) {
    return new Reading(
        milliSiemensPerCm, ConductivityUnit.MILLISIEMENS_PER_CM, celsius, TemperatureUnit.CELSIUS);
  }

  private synchronized Stamp stamp(boolean dated) {
    return new Stamp(3, kept.size() + 1L, monotonicNanos(), now.toEpochMilli(), dated);
  }

  private long monotonicNanos() {
    return Duration.between(START, now).toNanos();
  }

  /** Now, after the last sample. */
  synchronized Stamp stampNow() {
    return new Stamp(3, kept.size(), monotonicNanos(), now.toEpochMilli(), true);
  }

  /** The real watch over this nursery. */
  AlarmWatch watch(FixtureEvidence evidence) {
    AlarmWatch watch =
        new AlarmWatch(
            this,
            this::stampNow,
            evidence,
            evidence,
            new ServiceState(Optional::empty, () -> Long.MAX_VALUE, 1, ServiceState.USUAL_SILENCE),
            () -> true);
    watches.add(watch);
    return watch;
  }

  /** Real checks over this nursery, with two bottles on the shelf. */
  CheckWatch checks(FixtureEvidence evidence) {
    CheckWatch checks =
        new CheckWatch(
            new CheckWatch.Around(
                this,
                this::stampNow,
                point -> latest(point).map(Measurement::basis),
                (point, curve) -> calibrated.add(curve),
                condition -> {}),
            new CheckPlan(
                new StandardShelf(
                    List.of(bottle("low", "0.01 mol/L"), bottle("high", "0.02 mol/L"))),
                point -> 3.0,
                point -> CheckInterval.USUAL),
            evidence,
            this,
            new Afterthoughts());
    benches.add(checks);
    return checks;
  }

  /** Curves that were put in use, in order. */
  List<CalibrationCurve> calibrated() {
    return List.copyOf(calibrated);
  }

  private static StandardSolution bottle(String name, String strength) {
    return new StandardSolution(
        name,
        StandardCourse.kcl("KCl " + strength).orElseThrow(),
        "QE-A07",
        1,
        Optional.empty(),
        Optional.empty());
  }

  /** The real watch over its feed lines; hears what the nursery measures from now on. */
  FeedLineWatch lines(FixtureEvidence evidence, AlarmWatch alarms) {
    FeedLineWatch lines =
        new FeedLineWatch(site(), this::stampNow, evidence, evidence, this, alarms::report);
    lineWatches.add(lines);
    return lines;
  }

  private Measurement keep(Sample sample) {
    Measurement measurement = MeasurementChain.measure(sample, QuarryEnd.basis(sample));
    synchronized (this) {
      kept.add(measurement);
    }
    watches.forEach(watch -> watch.measured(measurement));
    benches.forEach(bench -> bench.measured(measurement));
    lineWatches.forEach(watch -> watch.measured(measurement));
    listeners.forEach(listener -> listener.accept(measurement));
    return measurement;
  }

  private synchronized List<Measurement> of(PointName point) {
    return kept.stream().filter(m -> m.point().equals(point)).toList();
  }

  @Override
  public Site site() {
    return QuarryEnd.SITE;
  }

  @Override
  public List<PointStatus> points() {
    return site().points().stream().map(p -> point(p.name()).orElseThrow()).toList();
  }

  @Override
  public Optional<PointStatus> point(PointName name) {
    return site().points().stream()
        .filter(point -> point.name().equals(name))
        .findFirst()
        .map(point -> new PointStatus(point, latest(name), latestReading(name)));
  }

  @Override
  public Optional<Measurement> latestReading(PointName name) {
    return of(name).stream()
        .filter(m -> Double.isFinite(m.conductivityMilliSiemensPerCm()))
        .reduce((earlier, later) -> later);
  }

  @Override
  public Subscription subscribe(Consumer<Measurement> listener) {
    listeners.add(listener);
    return () -> listeners.remove(listener);
  }

  @Override
  public TypedOutcome type(TypedReading typed) {
    if (typed.reading().conductivityMilliSiemensPerCm() > 200) {
      return new TypedOutcome.Refused(
          "conductivity",
          "conductivity %s mS/cm is above the limit 200 mS/cm; check value and unit"
              .formatted(typed.reading().conductivityMilliSiemensPerCm()));
    }
    return new TypedOutcome.Accepted(
        keep(new Indication(typed.point(), stamp(true), typed.reading(), Indication.Origin.TYPED)));
  }

  @Override
  public List<Octets> messages(PointName point, Stamp stamp) {
    return messages.getOrDefault(stamp, List.of());
  }

  /** A probe says something, and its message is still remembered. */
  Measurement indicate(PointName point, double milliSiemensPerCm, double celsius, Octets message) {
    Measurement measurement = indicate(point, milliSiemensPerCm, celsius);
    messages.put(measurement.stamp(), List.of(message));
    return measurement;
  }

  @Override
  public synchronized Health health() {
    return new Health(
        3, START, new DurableMark(3, kept.size(), now), List.copyOf(trouble), 0, "0.1.0");
  }

  @Override
  public Instant now() {
    return now;
  }

  @Override
  public Optional<Measurement> latest(PointName point) {
    return of(point).stream().reduce((earlier, later) -> later);
  }

  @Override
  public Course course(PointName point, Instant from, Instant to, int maxBuckets) {
    List<Measurement> range = new ArrayList<>();
    scan(point, from, to, range::add);
    if (range.size() <= maxBuckets) {
      return new Course(Duration.ZERO, range.stream().map(FixtureNursery::single).toList());
    }
    Duration width = Duration.between(from, to).dividedBy(maxBuckets);
    List<Bucket> buckets = new ArrayList<>();
    for (int i = 0; i < maxBuckets; i++) {
      Instant start = from.plus(width.multipliedBy(i));
      Instant end = start.plus(width);
      List<Measurement> in =
          range.stream()
              .filter(m -> !m.stamp().wall().isBefore(start) && m.stamp().wall().isBefore(end))
              .toList();
      if (!in.isEmpty()) {
        buckets.add(QuarryEnd.bucket(start, in));
      }
    }
    return new Course(width, buckets);
  }

  private static Bucket single(Measurement measurement) {
    return QuarryEnd.bucket(measurement.stamp().wall(), List.of(measurement));
  }

  @Override
  public void scan(PointName point, Instant from, Instant to, Consumer<Measurement> each) {
    of(point).stream()
        .filter(m -> !m.stamp().wall().isBefore(from) && m.stamp().wall().isBefore(to))
        .forEach(each);
  }

  @Override
  public synchronized List<PointName> recorded() {
    return kept.stream().map(Measurement::point).distinct().sorted().toList();
  }

  @Override
  public synchronized Optional<Instant> newest() {
    return kept.stream().map(m -> m.stamp().wall()).max(Instant::compareTo);
  }

  static Flags flags(List<Measurement> measurements) {
    Flags flags = Flags.NONE;
    for (Measurement measurement : measurements) {
      flags = flags.with(measurement.flags());
    }
    return flags;
  }
}
