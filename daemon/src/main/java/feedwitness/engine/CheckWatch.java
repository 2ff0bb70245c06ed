package feedwitness.engine;

import feedwitness.alarm.Condition;
import feedwitness.calibration.CalibrationCurve;
import feedwitness.calibration.StandardShelf;
import feedwitness.check.CheckConditions;
import feedwitness.check.CheckDesk;
import feedwitness.check.CheckEvidence;
import feedwitness.check.CheckInterval;
import feedwitness.check.CheckLimits;
import feedwitness.check.CheckReply;
import feedwitness.check.CheckRequest;
import feedwitness.check.CheckSubject;
import feedwitness.check.Comparisons;
import feedwitness.check.ControlChart;
import feedwitness.check.CurveAdjusted;
import feedwitness.check.Entry;
import feedwitness.check.Instrument;
import feedwitness.check.Mark;
import feedwitness.check.PlainWaterWatch;
import feedwitness.check.ProbeHistory;
import feedwitness.check.ProbeReading;
import feedwitness.check.Thermometer;
import feedwitness.check.When;
import feedwitness.ledger.Afterthoughts;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceLedger;
import feedwitness.ledger.History;
import feedwitness.measurement.Basis;
import feedwitness.measurement.Measurement;
import feedwitness.quality.Flags;
import feedwitness.quality.Quality;
import feedwitness.quality.QualityFlag;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.sample.Indication;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Brings checks to life: feeds them what probes say, keeps what they find, marks what a probe says
 * in a beaker, and puts a new calibration in use. Called by the engine's thread and by whoever
 * leads through a check; the lock is held for memory work only, never for the disk.
 */
public final class CheckWatch implements CheckBench, EngineWatcher {
  /** A chart over a season is no work for every second. */
  private static final long CONDITIONS_NANOS = 30_000_000_000L;

  private static final double THERMOMETER_TOLERANCE_KELVIN = 0.5;
  private static final String CHECKED = "it is being checked";

  private final Around around;
  private final CheckPlan plan;
  private final CheckRecords records;
  private final CheckDesk desk;
  private final Map<PointName, PlainWaterWatch> plainWater = new HashMap<>();
  private volatile Map<PointName, Flags> marks = Map.of();
  private long judgedNanos;
  private boolean due = true;

  /**
   * What it is given of the engine.
   *
   * @param clock stamps what happens: boot, sequence of the last sample, now
   * @param bases what a measurement of a probe is based on now
   * @param calibrate puts another curve in use
   * @param alarms the door for what is found
   */
  public record Around(
      LiveView view,
      Supplier<Stamp> clock,
      Function<PointName, Optional<Basis>> bases,
      BiConsumer<PointName, CalibrationCurve> calibrate,
      Consumer<Condition> alarms) {}

  /** Starts from what is on record; curves that are in use are told at once. */
  public <S extends EvidenceLedger & EvidenceHistory> CheckWatch(
      Around around, CheckPlan plan, S store, History history, Afterthoughts later) {
    this.around = around;
    this.plan = plan;
    this.records = new CheckRecords(store, later);
    this.desk =
        new CheckDesk(
            plan.shelf(),
            CheckLimits.USUAL,
            subject -> FirstReading.of(history, subject.name(), around.view().now()));
    Stamp now = around.clock().get();
    var unused = records.keep(now, desk.resume(CheckRecords.read(store), when(now)));
    for (CheckSubject subject : probes(around.view().site())) {
      if (!desk.history(subject).adjustments().isEmpty()) {
        around.calibrate().accept(subject.name(), desk.history(subject).curve());
      }
    }
    settle(around.view().site());
    mark();
  }

  private void settle(Site site) {
    plainWater.clear();
    for (MeasuringPoint point : site.points()) {
      if (point.probe().isEmpty()) {
        continue;
      }
      boolean lies =
          point.place() == MeasuringPoint.Place.LINE || point.place() == MeasuringPoint.Place.DRAIN;
      desk.watchPlace(CheckSubject.probe(point.name()), lies);
      if (point.place() == MeasuringPoint.Place.LINE) {
        site.sourceOf(point)
            .ifPresent(
                source ->
                    plainWater.put(
                        point.name(),
                        new PlainWaterWatch(
                            CheckSubject.probe(point.name()),
                            source.text(),
                            plan.tolerance(point.name()))));
      }
    }
  }

  private static When when(Stamp stamp) {
    return new When(stamp.monotonicNanos(), stamp.wall());
  }

  private When now() {
    return when(around.clock().get());
  }

  private static List<CheckSubject> probes(Site site) {
    return site.points().stream()
        .filter(point -> point.probe().isPresent())
        .map(point -> CheckSubject.probe(point.name()))
        .toList();
  }

  /** Adds to what a probe says that it hangs in a beaker or elsewhere; waits for nobody. */
  public Measurement marked(Measurement measurement) {
    Flags added = marks.get(measurement.point());
    if (added == null
        || !(measurement.sample() instanceof Indication said)
        || said.origin() != Indication.Origin.PROBE) {
      return measurement;
    }
    return new Measurement(
        measurement.sample(),
        measurement.conductivityMilliSiemensPerCm(),
        measurement.conductivity25MilliSiemensPerCm(),
        measurement.standardUncertaintyMilliSiemensPerCm(),
        measurement.temperatureCelsius(),
        measurement.flags().with(added),
        measurement.basis());
  }

  /** Why alarms about a subject do not count now; waits for nobody. */
  public Optional<String> aside(String subject) {
    return PointName.isValid(subject)
            && marks.getOrDefault(new PointName(subject), Flags.NONE).has(QualityFlag.IN_BEAKER)
        ? Optional.of(CHECKED)
        : Optional.empty();
  }

  private void mark() {
    Map<PointName, Flags> fresh = new HashMap<>();
    for (CheckSubject subject : probes(around.view().site())) {
      if (desk.suppressed(subject)) {
        fresh.put(subject.name(), Flags.of(QualityFlag.IN_BEAKER));
      } else if (desk.outOfPlace(subject).isPresent()) {
        fresh.put(subject.name(), Flags.of(QualityFlag.OUT_OF_PLACE));
      }
    }
    if (!fresh.equals(marks)) {
      marks = Map.copyOf(fresh);
      due = true;
    }
  }

  @Override
  public synchronized void measured(Measurement measurement) {
    if (!(measurement.sample() instanceof Indication said)
        || said.origin() != Indication.Origin.PROBE
        || Double.isNaN(said.reading().conductivityMilliSiemensPerCm())) {
      return;
    }
    CheckSubject subject = CheckSubject.probe(measurement.point());
    ProbeReading raw =
        new ProbeReading(
            measurement.stamp(),
            said.reading().conductivityMilliSiemensPerCm(),
            said.reading().temperatureCelsius());
    List<CheckEvidence> fresh =
        new ArrayList<>(desk.reading(subject, raw, measurement.conductivity25MilliSiemensPerCm()));
    fresh.addAll(plainWater(measurement));
    keepUnwaited(fresh, measurement.stamp());
  }

  private List<CheckEvidence> plainWater(Measurement measurement) {
    if (measurement.flags().worst().compareTo(Quality.UNKNOWN) > 0
        || Double.isNaN(measurement.conductivity25MilliSiemensPerCm())) {
      return List.of();
    }
    Comparisons.Value25 value = Comparing.of(measurement);
    Site site = around.view().site();
    plainWater.forEach(
        (line, watch) -> {
          if (site.point(line).flatMap(site::sourceOf).equals(Optional.of(measurement.point()))) {
            watch.source(value);
          }
        });
    PlainWaterWatch own = plainWater.get(measurement.point());
    return own == null
        ? List.of()
        : own.line(measurement.stamp(), value).stream()
            .flatMap(made -> desk.record(made).evidence().stream())
            .toList();
  }

  private void keepUnwaited(List<CheckEvidence> fresh, Stamp at) {
    if (!fresh.isEmpty()) {
      var unused = keep(fresh, at);
    }
    mark();
  }

  /** Handed over under the lock, so that records stand in the order in which things happened. */
  private CompletableFuture<Void> keep(List<CheckEvidence> fresh, Stamp at) {
    for (CheckEvidence record : fresh) {
      if (record instanceof CurveAdjusted adjusted
          && adjusted.subject().kind() == CheckSubject.Kind.PROBE) {
        around.calibrate().accept(adjusted.subject().name(), adjusted.after());
      }
    }
    due |= !fresh.isEmpty();
    return records.keep(at, fresh);
  }

  @Override
  public synchronized void tick(Stamp at) {
    keepUnwaited(desk.tick(when(at)), at);
    if (due || at.monotonicNanos() - judgedNanos >= CONDITIONS_NANOS) {
      due = false;
      judgedNanos = at.monotonicNanos();
      for (CheckSubject subject : subjects()) {
        CheckConditions.of(subject, chart(subject), interval(subject), desk, at.wall())
            .forEach(around.alarms());
      }
    }
  }

  @Override
  public synchronized void follow(Site site) {
    settle(site);
    mark();
  }

  private ControlChart chart(CheckSubject subject) {
    return ControlChart.of(desk.history(subject), plan.tolerance(subject.name()), Double.NaN);
  }

  private CheckInterval interval(CheckSubject subject) {
    return plan.interval().apply(subject.name());
  }

  @Override
  public synchronized List<CheckSubject> subjects() {
    List<CheckSubject> all = new ArrayList<>(probes(around.view().site()));
    desk.evidence().stream()
        .map(CheckEvidence::subject)
        .filter(subject -> subject.kind() == CheckSubject.Kind.METER)
        .distinct()
        .sorted()
        .forEach(all::add);
    return all;
  }

  @Override
  public StandardShelf shelf() {
    return plan.shelf();
  }

  @Override
  public synchronized Stand stand(CheckSubject subject) {
    ControlChart chart = chart(subject);
    return new Stand(
        subject,
        around
            .view()
            .site()
            .point(subject.name())
            .filter(point -> subject.kind() == CheckSubject.Kind.PROBE)
            .map(MeasuringPoint::title)
            .orElse(subject.name().text()),
        desk.view(subject),
        desk.lastVerdict(subject),
        interval(subject).due(chart, around.view().now()),
        chart,
        desk.suppressed(subject) ? Optional.of(CHECKED) : Optional.empty(),
        desk.outOfPlace(subject),
        desk.history(subject).undoable().isPresent());
  }

  @Override
  public synchronized ProbeHistory history(CheckSubject subject) {
    return desk.history(subject);
  }

  @Override
  public synchronized List<CheckEvidence> evidence() {
    return desk.evidence();
  }

  @Override
  public CheckRequest.Answer begin(Wish wish) throws IOException {
    CompletableFuture<Void> kept = CompletableFuture.completedFuture(null);
    CheckRequest.Answer answer;
    synchronized (this) {
      Stamp now = around.clock().get();
      Optional<CheckRequest> request = request(wish, now);
      if (request.isEmpty()) {
        return new CheckRequest.Refused(
            "%s has no probe; check the meter with which it is measured".formatted(wish.subject()));
      }
      answer = desk.begin(request.get(), when(now));
      if (answer instanceof CheckRequest.Begun begun) {
        kept = keep(List.of(begun.evidence()), now);
        mark();
      }
    }
    CheckRecords.await(kept);
    return answer;
  }

  private Optional<CheckRequest> request(Wish wish, Stamp now) {
    CheckSubject subject = wish.subject();
    boolean probe = subject.kind() == CheckSubject.Kind.PROBE;
    Optional<Instrument> instrument =
        probe
            ? probes(around.view().site()).contains(subject)
                ? around
                    .bases()
                    .apply(subject.name())
                    .map(basis -> new Instrument(basis, Double.NaN))
                : Optional.empty()
            : Optional.of(wish.handheld());
    Optional<Measurement> last =
        probe
            ? around.view().point(subject.name()).flatMap(PointStatus::lastReading)
            : Optional.empty();
    Fed fed = Fed.at(around.view(), subject, now);
    return instrument.map(
        known ->
            new CheckRequest(
                fresh(subject, now),
                subject,
                wish.who(),
                plan.shelf(),
                wish.standards(),
                Double.isNaN(wish.tolerancePercent())
                    ? plan.tolerance(subject.name())
                    : wish.tolerancePercent(),
                known,
                fed.low(),
                fed.high(),
                last.map(Measurement::conductivity25MilliSiemensPerCm).orElse(Double.NaN),
                last.map(Measurement::stamp).map(Mark::of),
                now.wall().atZone(around.view().site().zone()).toLocalDate(),
                wish.confirmed()));
  }

  /** {@code tank-20260602-1}, for people who write it on a page. */
  private String fresh(CheckSubject subject, Stamp now) {
    String day =
        now.wall().atZone(around.view().site().zone()).toLocalDate().toString().replace("-", "");
    String base =
        (subject.kind() == CheckSubject.Kind.METER ? "meter-" : "") + subject.name() + "-" + day;
    int number = 1;
    while (isTaken(base + "-" + number)) {
      number++;
    }
    return base + "-" + number;
  }

  private boolean isTaken(String id) {
    return desk.evidence().stream().anyMatch(record -> record.entry().check().equals(id));
  }

  @Override
  public CheckReply act(CheckSubject subject, Deed deed) throws IOException {
    return deed(now -> desk.act(subject, session -> deed.in(session, now), now));
  }

  private CheckReply deed(Function<When, CheckReply> deed) throws IOException {
    CheckReply reply;
    CompletableFuture<Void> kept;
    synchronized (this) {
      Stamp now = around.clock().get();
      reply = deed.apply(when(now));
      kept = keep(reply.evidence(), now);
      mark();
    }
    CheckRecords.await(kept);
    return reply;
  }

  @Override
  public CheckReply adjust(CheckSubject subject, String who, boolean byInstrument)
      throws IOException {
    return act(
        subject,
        (session, now) -> {
          String id = adjustment(subject);
          return byInstrument
              ? session.adjustedByInstrument(who, id, now)
              : session.adjust(who, id, now);
        });
  }

  private String adjustment(CheckSubject subject) {
    return "%s-adjusted-%d"
        .formatted(
            subject.toText().replace('/', '-'), desk.history(subject).adjustments().size() + 1);
  }

  @Override
  public CheckReply undo(CheckSubject subject, String who) throws IOException {
    return deed(now -> desk.undo(subject, adjustment(subject), who, now, lastMark(subject)));
  }

  private Optional<Mark> lastMark(CheckSubject subject) {
    return around
        .view()
        .point(subject.name())
        .flatMap(PointStatus::lastReading)
        .map(Measurement::stamp)
        .map(Mark::of);
  }

  @Override
  public CheckReply returned(CheckSubject subject, String who) throws IOException {
    return deed(now -> desk.returned(subject, who, now));
  }

  @Override
  public Comparisons.Outcome compareSample(
      CheckSubject probe, String meter, double milliSiemensPerCm, double celsius, String who)
      throws IOException {
    Optional<Measurement> last = current(probe);
    if (last.isEmpty()) {
      return new Comparisons.Refused(silent(probe));
    }
    CheckSubject instrument = CheckSubject.meter(new PointName(meter));
    return compare(
        Comparisons.grabSample(
            new Entry("", probe, now().wall(), who),
            Comparing.of(last.get()),
            meter,
            Comparing.sample(history(instrument), milliSiemensPerCm, celsius),
            lastVerdict(instrument),
            plan.tolerance(probe.name())));
  }

  private synchronized feedwitness.check.Verdict lastVerdict(CheckSubject meter) {
    return desk.lastVerdict(meter);
  }

  @Override
  public Comparisons.Outcome compareThermometer(
      CheckSubject probe, String thermometer, double celsius, double accuracyKelvin, String who)
      throws IOException {
    Optional<Measurement> last = current(probe);
    if (last.isEmpty()) {
      return new Comparisons.Refused(silent(probe));
    }
    return compare(
        Comparisons.thermometer(
            new Entry("", probe, now().wall(), who),
            last.get().temperatureCelsius(),
            Comparing.standardKelvin(),
            thermometer,
            celsius,
            new Thermometer(celsius, accuracyKelvin).standardKelvin(),
            THERMOMETER_TOLERANCE_KELVIN));
  }

  private Comparisons.Outcome compare(Comparisons.Outcome outcome) throws IOException {
    if (outcome instanceof Comparisons.Made made) {
      CheckReply unused = deed(now -> desk.record(made.evidence()));
    }
    return outcome;
  }

  /** The last reading, if the probe is heard now. */
  private Optional<Measurement> current(CheckSubject probe) {
    return around
        .view()
        .point(probe.name())
        .flatMap(PointStatus::latest)
        .filter(m -> m.stamp().boot() == around.clock().get().boot())
        .filter(m -> !Double.isNaN(m.conductivity25MilliSiemensPerCm()))
        .filter(m -> !marks.containsKey(m.point()));
  }

  private static String silent(CheckSubject probe) {
    return "%s gives no reading of its place now; wait until it does, then compare"
        .formatted(probe);
  }
}
