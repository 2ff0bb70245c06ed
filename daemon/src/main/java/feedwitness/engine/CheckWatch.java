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
import feedwitness.check.Mark;
import feedwitness.check.ProbeHistory;
import feedwitness.check.ProbeReading;
import feedwitness.check.When;
import feedwitness.ledger.Afterthoughts;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceLedger;
import feedwitness.ledger.History;
import feedwitness.measurement.Basis;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.sample.Indication;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Brings checks to life: feeds them what probes say, keeps what they find, marks what a probe says
 * in a beaker, and puts a new calibration in use. What is found is recorded first, then counted.
 * Called by the engine's thread and by whoever leads through a check; the lock is held for memory
 * work only, never for the disk.
 */
public final class CheckWatch implements CheckBench, EngineWatcher {
  /** A chart over a season is no work for every second. */
  private static final long CONDITIONS_NANOS = 30_000_000_000L;

  private final Around around;
  private final CheckPlan plan;
  private final CheckDesk desk;
  private final CheckKeeper keeper;
  private final CheckRequests requests;
  private final CheckComparisons comparisons;
  private final PlainWaterLines plainWater;
  private final PlaceMarks marks = new PlaceMarks();
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
    LiveView view = around.view();
    this.desk =
        new CheckDesk(
            plan.shelf(),
            CheckLimits.USUAL,
            subject -> FirstReading.of(history, subject.name(), view.now()),
            () -> view.site().zone());
    this.keeper = new CheckKeeper(new CheckRecords(store, later), desk, around.calibrate());
    this.requests = new CheckRequests(view, around.bases(), plan, desk);
    this.comparisons = new CheckComparisons(view, plan, desk, marks);
    this.plainWater = new PlainWaterLines(plan);
    Stamp now = around.clock().get();
    var unused = keeper.keep(desk.resume(CheckRecords.read(store), when(now)), now);
    for (CheckSubject subject : probes()) {
      if (!desk.history(subject).adjustments().isEmpty()) {
        around.calibrate().accept(subject.name(), desk.history(subject).curve());
      }
    }
    settle(view.site());
    look();
  }

  private void settle(Site site) {
    for (MeasuringPoint point : site.points()) {
      if (point.probe().isPresent()) {
        boolean lies =
            point.place() == MeasuringPoint.Place.LINE
                || point.place() == MeasuringPoint.Place.DRAIN;
        desk.watchPlace(CheckSubject.probe(point.name()), lies);
      }
    }
    plainWater.settle(site);
  }

  private static When when(Stamp stamp) {
    return new When(stamp.monotonicNanos(), stamp.wall());
  }

  private List<CheckSubject> probes() {
    return around.view().site().points().stream()
        .filter(point -> point.probe().isPresent())
        .map(point -> CheckSubject.probe(point.name()))
        .toList();
  }

  /** Adds to what a probe says that it hangs in a beaker or elsewhere; waits for nobody. */
  public Measurement marked(Measurement measurement) {
    return marks.marked(measurement);
  }

  /** Why alarms about a subject do not count now; waits for nobody. */
  public Optional<String> aside(String subject) {
    return marks.aside(subject);
  }

  private void look() {
    due |= marks.look(desk, probes());
  }

  private void listen(Stamp now) {
    due |= keeper.listen(when(now));
    look();
  }

  private CompletableFuture<Void> keep(List<CheckEvidence> fresh, Stamp at) {
    CompletableFuture<Void> kept = keeper.keep(fresh, at);
    look();
    return kept;
  }

  @Override
  public synchronized void measured(Measurement measurement) {
    if (!(measurement.sample() instanceof Indication said)
        || said.origin() != Indication.Origin.PROBE
        || Double.isNaN(said.reading().conductivityMilliSiemensPerCm())) {
      return;
    }
    listen(measurement.stamp());
    CheckSubject subject = CheckSubject.probe(measurement.point());
    ProbeReading raw =
        new ProbeReading(
            measurement.stamp(),
            said.reading().conductivityMilliSiemensPerCm(),
            said.reading().temperatureCelsius());
    List<CheckEvidence> fresh =
        new ArrayList<>(desk.reading(subject, raw, measurement.conductivity25MilliSiemensPerCm()));
    plainWater.heard(measurement).ifPresent(made -> fresh.addAll(desk.record(made).evidence()));
    var unused = keep(fresh, measurement.stamp());
  }

  @Override
  public synchronized void tick(Stamp at) {
    When now = when(at);
    listen(at);
    if (!keeper.waits(now)) {
      List<CheckEvidence> fresh = new ArrayList<>();
      keeper.owed().forEach(fact -> fresh.addAll(desk.record(fact).evidence()));
      fresh.addAll(desk.tick(now));
      var unused = keep(fresh, at);
    }
    if (due || at.monotonicNanos() - judgedNanos >= CONDITIONS_NANOS) {
      due = false;
      judgedNanos = at.monotonicNanos();
      for (CheckSubject subject : subjects()) {
        CheckConditions.of(
                subject,
                chart(subject),
                interval(subject),
                desk,
                at.wall(),
                around.view().site().zone())
            .forEach(around.alarms());
      }
    }
  }

  @Override
  public synchronized void follow(Site site) {
    settle(site);
    look();
  }

  private ControlChart chart(CheckSubject subject) {
    return ControlChart.of(desk.history(subject), plan.tolerance(subject.name()), Double.NaN);
  }

  private CheckInterval interval(CheckSubject subject) {
    return plan.interval().apply(subject.name());
  }

  @Override
  public synchronized List<CheckSubject> subjects() {
    List<CheckSubject> all = new ArrayList<>(probes());
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
    Stamp now = around.clock().get();
    listen(now);
    Site site = around.view().site();
    ControlChart chart = chart(subject);
    return new Stand(
        subject,
        site.point(subject.name())
            .filter(point -> subject.kind() == CheckSubject.Kind.PROBE)
            .map(MeasuringPoint::title)
            .orElse(subject.name().text()),
        desk.view(subject),
        desk.lastVerdict(subject),
        interval(subject).due(chart, now.wall(), site.zone()),
        chart,
        desk.suppressed(subject) ? Optional.of(PlaceMarks.CHECKED) : Optional.empty(),
        desk.outOfPlace(subject),
        desk.history(subject).undoable().isPresent(),
        keeper.trouble(subject, when(now)));
  }

  @Override
  public synchronized ProbeHistory history(CheckSubject subject) {
    listen(around.clock().get());
    return desk.history(subject);
  }

  @Override
  public synchronized List<CheckEvidence> evidence() {
    listen(around.clock().get());
    return desk.evidence();
  }

  /** Does something and answers when that is on record, after all that was done there before. */
  private <T> T deed(
      CheckSubject subject, Function<Stamp, T> deed, Function<T, List<CheckEvidence>> facts)
      throws IOException {
    CheckRecords.awaitEarlier(earlier(subject));
    T reply;
    CompletableFuture<Void> kept;
    synchronized (this) {
      Stamp now = around.clock().get();
      listen(now);
      reply = deed.apply(now);
      kept = keep(facts.apply(reply), now);
    }
    try {
      CheckRecords.await(kept);
    } finally {
      settleWith(around.clock().get());
    }
    return reply;
  }

  private synchronized CompletableFuture<Void> earlier(CheckSubject subject) {
    return keeper.last(subject);
  }

  private synchronized void settleWith(Stamp now) {
    listen(now);
  }

  private CheckReply reply(CheckSubject subject, Function<Stamp, CheckReply> deed)
      throws IOException {
    return deed(subject, deed, CheckReply::evidence);
  }

  @Override
  public CheckRequest.Answer begin(Wish wish) throws IOException {
    return deed(
        wish.subject(),
        now -> begin(wish, now),
        answer ->
            answer instanceof CheckRequest.Begun begun ? List.of(begun.evidence()) : List.of());
  }

  private CheckRequest.Answer begin(Wish wish, Stamp now) {
    return requests
        .of(wish, now)
        .map(request -> desk.begin(request, when(now)))
        .orElseGet(
            () ->
                new CheckRequest.Refused(
                    "%s has no probe; check the meter with which it is measured"
                        .formatted(wish.subject())));
  }

  @Override
  public CheckReply act(CheckSubject subject, Deed deed) throws IOException {
    return reply(
        subject, now -> desk.act(subject, session -> deed.in(session, when(now)), when(now)));
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
    return reply(
        subject, now -> desk.undo(subject, adjustment(subject), who, when(now), lastMark(subject)));
  }

  @Override
  public CheckReply replaced(CheckSubject subject, String who, String what) throws IOException {
    return reply(subject, now -> desk.replaced(subject, who, what, when(now), lastMark(subject)));
  }

  private Optional<Mark> lastMark(CheckSubject subject) {
    return around
        .view()
        .point(subject.name())
        .filter(status -> subject.kind() == CheckSubject.Kind.PROBE)
        .flatMap(PointStatus::lastReading)
        .map(Measurement::stamp)
        .map(Mark::of);
  }

  @Override
  public CheckReply returned(CheckSubject subject, String who) throws IOException {
    return reply(subject, now -> desk.returned(subject, who, when(now)));
  }

  @Override
  public Comparisons.Outcome compareSample(
      CheckSubject probe, String meter, double milliSiemensPerCm, double celsius, String who)
      throws IOException {
    return compare(
        probe, now -> comparisons.sample(probe, meter, milliSiemensPerCm, celsius, who, now));
  }

  @Override
  public Comparisons.Outcome compareThermometer(
      CheckSubject probe, String thermometer, double celsius, double accuracyKelvin, String who)
      throws IOException {
    return compare(
        probe,
        now -> comparisons.thermometer(probe, thermometer, celsius, accuracyKelvin, who, now));
  }

  private Comparisons.Outcome compare(
      CheckSubject probe, Function<Stamp, Comparisons.Outcome> comparison) throws IOException {
    return deed(
        probe,
        comparison,
        outcome ->
            CheckComparisons.made(outcome)
                .map(made -> desk.record(made).evidence())
                .orElse(List.of()));
  }
}
