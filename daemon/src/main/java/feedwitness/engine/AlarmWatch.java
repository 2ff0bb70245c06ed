package feedwitness.engine;

import feedwitness.alarm.AlarmBook;
import feedwitness.alarm.AlarmEvent;
import feedwitness.alarm.AlarmKey;
import feedwitness.alarm.AlarmKind;
import feedwitness.alarm.AlarmOutcome;
import feedwitness.alarm.Condition;
import feedwitness.alarm.LineKinds;
import feedwitness.alarm.PointKinds;
import feedwitness.alarm.Standing;
import feedwitness.check.CheckConditions;
import feedwitness.check.CheckKinds;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceLedger;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.measurement.Measurement;
import feedwitness.quality.Quality;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.tinylog.Logger;

/**
 * Watches over the readings: judges each against the limits that hold, runs the alarms' life cycle,
 * and puts what happens on record. Called by the engine's thread and by whoever answers alarms; the
 * lock is held for memory work only, never for the disk.
 */
public final class AlarmWatch implements AlarmDesk, EngineWatcher {
  /** Kind of the record that says which installation this is. */
  private static final String INSTALLATION = "installation";

  private static final Set<String> POINT_KINDS =
      Stream.concat(PointKinds.ALL.stream(), CheckKinds.ALL.stream())
          .map(AlarmKind::code)
          .collect(Collectors.toUnmodifiableSet());
  private static final Set<String> LINE_KINDS =
      Set.copyOf(LineKinds.ALL.stream().map(AlarmKind::code).toList());
  private static final Set<String> PROBE_KINDS =
      Set.of(
          PointKinds.NO_DATA.code(),
          PointKinds.IN_AIR.code(),
          PointKinds.INSTRUMENT_FAULT.code(),
          CheckKinds.DUE.code(),
          CheckKinds.OVERDUE.code(),
          CheckKinds.OUT_OF_PLACE.code());

  private final LiveView view;
  private final Supplier<Stamp> clock;
  private final EvidenceLedger ledger;
  private final Recorder recorder;
  private final ServiceConditions service;
  private volatile Function<String, Optional<String>> aside = subject -> Optional.empty();
  private final List<Consumer<AlarmEvent>> listeners = new CopyOnWriteArrayList<>();
  private final List<Consumer<PointName>> feedingListeners = new CopyOnWriteArrayList<>();
  private final AlarmBook book;
  private final FeedingBook feeding;
  private final Stamp started;
  private final Duration silence;
  private final UUID identity;
  private KindRules rules;
  private Stamp last;
  private boolean changed;

  /**
   * Starts from what is on record.
   *
   * @param clock stamps what happens: boot, sequence of the last sample, now
   * @param dates whether the clock is trusted now
   */
  public AlarmWatch(
      LiveView view,
      Supplier<Stamp> clock,
      EvidenceLedger ledger,
      EvidenceHistory history,
      ServiceState service,
      BooleanSupplier dates) {
    this.view = view;
    this.clock = clock;
    this.ledger = ledger;
    this.recorder = new Recorder(ledger);
    this.service = new ServiceConditions(service, dates);
    this.silence = service.silence();
    this.book = AlarmRecords.restore(history);
    this.feeding = new FeedingBook(history);
    this.started = clock.get();
    this.last = started;
    this.rules = new KindRules(view.site().rules());
    this.identity = identity(history);
    forgetWhatIsGone(view.site());
  }

  private UUID identity(EvidenceHistory history) {
    List<Evidence> known = history.evidence(EvidenceQuery.newest(1, INSTALLATION));
    if (!known.isEmpty()) {
      return UUID.fromString(known.get(0).field("uuid"));
    }
    UUID made = UUID.randomUUID();
    recorder.record(started, EvidenceDraft.of(INSTALLATION, "", Map.of("uuid", made.toString())));
    return made;
  }

  @Override
  public UUID identity() {
    return identity;
  }

  @Override
  public synchronized void measured(Measurement measurement) {
    Optional<MeasuringPoint> point = view.site().point(measurement.point());
    if (point.isEmpty()) {
      return;
    }
    Stamp now = notBefore(measurement.stamp());
    judge(point.get(), now);
    if (isUsable(measurement)
        && feeding.learn(
            point.get(), measurement.conductivity25MilliSiemensPerCm(), measurement.stamp())) {
      ledger.keepState(FeedingBook.STATE, feeding.levelsText());
      tellFeeding(point.get().name());
    }
  }

  private static boolean isUsable(Measurement measurement) {
    return Double.isFinite(measurement.conductivity25MilliSiemensPerCm())
        && measurement.flags().worst().compareTo(Quality.UNKNOWN) <= 0;
  }

  @Override
  public synchronized void tick(Stamp at) {
    Stamp now = notBefore(at);
    Site site = view.site();
    site.points().forEach(point -> judge(point, now));
    service.at(now).forEach(condition -> take(condition, now));
    tell(book.tick(now));
    keep();
  }

  @Override
  public synchronized void follow(Site site) {
    rules = new KindRules(site.rules());
    feeding.follow(site);
    forgetWhatIsGone(site);
  }

  private void forgetWhatIsGone(Site site) {
    tell(book.forget(key -> isGone(site, key), notBefore(clock.get())));
    changed = true;
  }

  private boolean isGone(Site site, AlarmKey key) {
    if (rules.off(key)) {
      return true;
    }
    if (LINE_KINDS.contains(key.kind())) {
      return site.feedLines().stream().noneMatch(l -> l.name().text().equals(key.subject()));
    }
    if (!POINT_KINDS.contains(key.kind()) || CheckConditions.isOfMeter(key.subject())) {
      return false;
    }
    Optional<MeasuringPoint> point =
        PointName.isValid(key.subject())
            ? site.point(new PointName(key.subject()))
            : Optional.empty();
    return point.isEmpty() || (PROBE_KINDS.contains(key.kind()) && point.get().probe().isEmpty());
  }

  private void judge(MeasuringPoint point, Stamp now) {
    Site site = view.site();
    new PointConditions(
            point,
            latest(point, now),
            feeding.feeding().band(site, point, now),
            source(site, point, now),
            feeding.feeding().settling(point.name(), now),
            started,
            silence,
            now,
            book::active)
        .all()
        .forEach(condition -> take(condition, now));
  }

  /** What a probe said before this start says nothing of now. */
  private @Nullable Measurement latest(MeasuringPoint point, Stamp now) {
    return view.point(point.name())
        .flatMap(PointStatus::latest)
        .filter(m -> point.probe().isEmpty() || m.stamp().boot() == now.boot())
        .orElse(null);
  }

  private double source(Site site, MeasuringPoint point, Stamp now) {
    return SourceWater.of(view, site, point, now);
  }

  /**
   * Lets somebody say why alarms about a subject do not count at the moment.
   *
   * @param why is asked for each condition and must return at once, without waiting for anybody
   */
  public void suppressBy(Function<String, Optional<String>> why) {
    aside = why;
  }

  private void take(Condition condition, Stamp now) {
    Optional<String> byDesign =
        condition.suppressed().isPresent()
            ? condition.suppressed()
            : aside.apply(condition.subject());
    rules
        .apply(condition.suppressed(byDesign))
        .ifPresent(counting -> tell(book.report(counting, now)));
  }

  /** Time of one start never goes back, whichever thread brings it. */
  private Stamp notBefore(Stamp at) {
    if (at.boot() == last.boot() && at.monotonicNanos() < last.monotonicNanos()) {
      return new Stamp(
          last.boot(),
          Math.max(last.sequence(), at.sequence()),
          last.monotonicNanos(),
          last.wallMillis(),
          last.dated());
    }
    last =
        at.boot() == last.boot() && at.sequence() < last.sequence()
            ? new Stamp(
                at.boot(), last.sequence(), at.monotonicNanos(), at.wallMillis(), at.dated())
            : at;
    return last;
  }

  private void tell(List<AlarmEvent> events) {
    for (AlarmEvent event : events) {
      changed = true;
      recorder.record(event.at(), AlarmRecords.draft(event, book.find(event.key())));
      Logger.info(
          "{}: {} {}", event.key(), event.transition(), event.who().isEmpty() ? event.words() : "");
      listeners.forEach(listener -> listener.accept(event));
    }
  }

  private void keep() {
    if (changed) {
      changed = false;
      ledger.keepState(AlarmRecords.STATE, book.toText());
    }
  }

  @Override
  public synchronized List<Standing> alarms() {
    return book.all();
  }

  @Override
  public synchronized Optional<Standing> alarm(AlarmKey key) {
    return book.find(key);
  }

  @Override
  public synchronized void report(Condition condition) {
    take(condition, notBefore(clock.get()));
  }

  @Override
  public AlarmOutcome acknowledge(AlarmKey key, String who, String note) {
    return answer(now -> book.acknowledge(key, who, note, now));
  }

  @Override
  public AlarmOutcome reopen(AlarmKey key, String who) {
    return answer(now -> book.reopen(key, who, now));
  }

  @Override
  public AlarmOutcome shelve(AlarmKey key, Duration howLong, String who, String note) {
    return answer(
        now -> {
          Instant until = now.wall().plus(howLong);
          return book.shelve(key, until, who, note, now);
        });
  }

  @Override
  public AlarmOutcome unshelve(AlarmKey key, String who) {
    return answer(now -> book.unshelve(key, who, now));
  }

  @Override
  public AlarmOutcome takeOut(AlarmKey key, String who, String note) {
    return answer(now -> book.takeOut(key, who, note, now));
  }

  @Override
  public AlarmOutcome putBack(AlarmKey key, String who, String note) {
    return answer(now -> book.putBack(key, who, note, now));
  }

  private synchronized AlarmOutcome answer(Function<Stamp, AlarmOutcome> deed) {
    AlarmOutcome outcome = deed.apply(notBefore(clock.get()));
    if (outcome instanceof AlarmOutcome.Done done) {
      tell(done.events());
      keep();
    }
    return outcome;
  }

  @Override
  public Evidence note(JournalNote note) throws IOException {
    Map<String, String> fields = new TreeMap<>();
    fields.put("text", note.text());
    fields.put("plants", note.plants());
    fields.put("block", note.block());
    EvidenceDraft draft =
        new EvidenceDraft(
            JournalNote.KIND, note.point(), note.author(), new TreeMap<>(fields), note.photo());
    return recorder.recordNow(clock.get(), draft);
  }

  @Override
  public synchronized List<FeedingStatus> feeding() {
    return view.site().points().stream().filter(FeedingBook::isFed).map(this::status).toList();
  }

  private FeedingStatus status(MeasuringPoint point) {
    Stamp now = clock.get();
    return feeding.status(view.site(), point, source(view.site(), point, now), now);
  }

  @Override
  public synchronized FeedingStatus.Outcome feed(
      PointName name, Running.What what, String strength, String who) {
    Site site = view.site();
    Optional<MeasuringPoint> point = site.point(name).filter(FeedingBook::isFed);
    if (point.isEmpty()) {
      return new FeedingStatus.Outcome.Refused(
          "point", "%s is no line, tank or other point that is fed".formatted(name));
    }
    List<String> there =
        feeding.feeding().strengths(site, name).stream().map(each -> each.name()).toList();
    if (what == Running.What.STRENGTH && !there.contains(strength)) {
      return new FeedingStatus.Outcome.Refused(
          "strength",
          there.isEmpty()
              ? "no strength is known for %s; write a [[strength]] table in the configuration"
                  .formatted(name)
              : "no such strength is fed at %s; there are: %s"
                  .formatted(name, String.join(", ", there)));
    }
    Stamp now = notBefore(clock.get());
    String named = what == Running.What.STRENGTH ? strength : "";
    recorder.record(now, feeding.say(name, new Running(what, named, who, Optional.of(now))));
    judge(point.get(), now);
    tellFeeding(name);
    return new FeedingStatus.Outcome.Taken(status(point.get()));
  }

  @Override
  public synchronized FeedingStatus.Outcome answer(
      PointName name, FeedingStatus.Answer answer, String title, String who) {
    Site site = view.site();
    Optional<MeasuringPoint> point = site.point(name).filter(FeedingBook::isFed);
    if (point.isEmpty() || status(point.get()).question().isEmpty()) {
      return new FeedingStatus.Outcome.Refused(
          "point", "nothing is asked about %s at the moment".formatted(name));
    }
    if (answer == FeedingStatus.Answer.STRENGTH && title.isBlank()) {
      return new FeedingStatus.Outcome.Refused("title", "give the strength a name");
    }
    Stamp now = notBefore(clock.get());
    feeding
        .answer(
            site,
            point.get(),
            source(site, point.get(), now),
            answer == FeedingStatus.Answer.STRENGTH ? title : "",
            who)
        .ifPresent(draft -> recorder.record(now, draft));
    ledger.keepState(FeedingBook.STATE, feeding.levelsText());
    tellFeeding(name);
    return new FeedingStatus.Outcome.Taken(status(point.get()));
  }

  private void tellFeeding(PointName point) {
    feedingListeners.forEach(listener -> listener.accept(point));
  }

  @Override
  public synchronized Optional<BandNow> band(PointName name) {
    Site site = view.site();
    return site.point(name).map(point -> feeding.feeding().band(site, point, clock.get()));
  }

  @Override
  public synchronized double source(PointName name) {
    Site site = view.site();
    return site.point(name).map(point -> source(site, point, clock.get())).orElse(Double.NaN);
  }

  @Override
  public LiveView.Subscription subscribe(Consumer<AlarmEvent> listener) {
    listeners.add(listener);
    return () -> listeners.remove(listener);
  }

  @Override
  public LiveView.Subscription subscribeFeeding(Consumer<PointName> listener) {
    feedingListeners.add(listener);
    return () -> feedingListeners.remove(listener);
  }
}
