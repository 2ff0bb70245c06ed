package feedwitness.check;

import feedwitness.calibration.StandardShelf;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * All checks of a nursery: who is at which probe, which readings belong to a beaker, what follows
 * from a check that failed. Every method that answers with evidence wants it kept before anybody is
 * told: say that it is {@link #onItsWay} and then that it was {@link #kept} or {@link #notKept}.
 * Belongs to one thread.
 */
public final class CheckDesk {
  private final StandardShelf shelf;
  private final CheckLimits limits;
  private final Function<CheckSubject, Optional<Mark>> firstMeasurement;
  private final Supplier<ZoneId> zone;
  private final List<CheckEvidence> evidence = new ArrayList<>();
  private final Set<CheckEvidence> uncounted = Collections.newSetFromMap(new IdentityHashMap<>());
  private final OpenChecks open = new OpenChecks();
  private final Map<CheckSubject, BeakerReturn> returning = new TreeMap<>();
  private final Map<CheckSubject, PlaceWatch> places = new HashMap<>();
  private final Map<CheckSubject, Instant> firstReadings = new HashMap<>();

  /**
   * An empty desk; {@link #resume} puts records on it.
   *
   * @param firstMeasurement first one on record of a probe, for back-tracing one that was never
   *     checked before
   * @param zone of the clock on the wall there, for times in words
   */
  public CheckDesk(
      StandardShelf shelf,
      CheckLimits limits,
      Function<CheckSubject, Optional<Mark>> firstMeasurement,
      Supplier<ZoneId> zone) {
    this.zone = zone;
    this.shelf = shelf;
    this.limits = limits;
    this.firstMeasurement = firstMeasurement;
  }

  /** Whether there are measurements of a probe from before a time; for a meter, false. */
  boolean readsSince(CheckSubject subject, Instant time) {
    @Nullable Instant known = firstReadings.get(subject);
    if (known == null && subject.kind() == CheckSubject.Kind.PROBE) {
      Optional<Mark> first = firstMeasurement.apply(subject);
      first.ifPresent(mark -> firstReadings.put(subject, mark.at()));
      known = first.map(Mark::at).orElse(null);
    }
    return known != null && known.isBefore(time);
  }

  /**
   * Takes all records in after a start, in the order in which they were kept. Checks that were open
   * go on or are closed; probes that were in a beaker still are.
   *
   * @return to be kept: ends of checks that could not go on, and what follows from them
   */
  public List<CheckEvidence> resume(List<CheckEvidence> kept, When now) {
    evidence.addAll(kept);
    List<CheckEvidence> fresh = new ArrayList<>();
    for (CheckSubject subject : kept.stream().map(CheckEvidence::subject).distinct().toList()) {
      ProbeHistory history = history(subject);
      for (ProbeHistory.Check check : history.checks()) {
        if (check.closed().isEmpty()) {
          fresh.addAll(resume(check, now));
        }
      }
      waitForReturn(subject, now);
      fresh.addAll(keep(consequencesThatAreMissing(subject)));
    }
    return fresh;
  }

  /** The power may fail between the end of a check and what follows from it. */
  private List<CheckEvidence> consequencesThatAreMissing(CheckSubject subject) {
    ProbeHistory history = everything(subject);
    List<ProbeHistory.Check> checks = history.checks();
    if (checks.isEmpty() || history.open().isPresent()) {
      return List.of();
    }
    String newest = checks.get(checks.size() - 1).started().entry().check();
    return history.qualifications().stream().anyMatch(range -> range.entry().check().equals(newest))
        ? List.of()
        : List.copyOf(BackTrace.ofNewest(history, firstMeasurement.apply(subject), zone.get()));
  }

  private void waitForReturn(CheckSubject subject, When now) {
    List<ProbeHistory.Check> checks = everything(subject).checks();
    if (!checks.isEmpty()) {
      waitForReturn(checks.get(checks.size() - 1), now);
    }
  }

  /** These are on their way to the record; they count for nothing that is told until then. */
  public void onItsWay(List<CheckEvidence> fresh) {
    uncounted.addAll(fresh);
  }

  /** These are on record and count. */
  public void kept(List<CheckEvidence> recorded) {
    recorded.forEach(uncounted::remove);
  }

  /**
   * These could not be recorded: they never happened, and whoever did them has to do them again.
   * Checks go back to what is on record, as after a restart.
   */
  public void notKept(List<CheckEvidence> lost, When now) {
    uncounted.removeAll(lost);
    evidence.removeIf(record -> lost.stream().anyMatch(one -> one == record));
    for (CheckSubject subject : lost.stream().map(CheckEvidence::subject).distinct().toList()) {
      open.forget(subject);
      returning.remove(subject);
      everything(subject)
          .open()
          .ifPresentOrElse(
              check ->
                  open.resume(
                      Resumption.rebuilt(check.started(), check.since(), shelf, limits, now)),
              () -> waitForReturn(subject, now));
    }
  }

  private List<CheckEvidence> resume(ProbeHistory.Check check, When now) {
    Resumption outcome =
        Resumption.of(check.started(), check.since(), shelf, limits, now, zone.get());
    if (outcome instanceof Resumption.Resumed resumed) {
      open.resume(resumed.session());
      return List.of();
    }
    return keep(withConsequences(((Resumption.Lost) outcome).evidence()));
  }

  /** Begins a check, unless somebody else is at that probe; the evidence is in the answer. */
  public CheckRequest.Answer begin(CheckRequest request, When now) {
    CheckRequest.Answer answer = open.begin(request, now, limits, zone.get(), remarks(request));
    if (answer instanceof CheckRequest.Begun begun) {
      evidence.add(begun.evidence());
      returning.remove(request.subject());
    }
    return answer;
  }

  /** Another profile than at the last check may mean another probe. */
  private List<String> remarks(CheckRequest request) {
    String now = request.instrument().basis().profile();
    return everything(request.subject()).ofPresentProbe().checks().stream()
        .reduce((a, b) -> b)
        .map(last -> last.started().basis().profile())
        .filter(then -> !then.equals(now))
        .map(
            then ->
                "%s was read as '%s' at its last check and is read as '%s' now; if it is another probe, log first that it was replaced"
                    .formatted(request.subject(), then, now))
        .stream()
        .toList();
  }

  /** Does a step of an open check, for example {@code session -> session.rinsed(now)}. */
  public CheckReply act(CheckSubject subject, Function<CheckSession, CheckReply> deed, When now) {
    Optional<CheckSession> session = open.of(subject);
    return session.isEmpty()
        ? CheckReply.refused("no check of %s is open; begin one".formatted(subject))
        : settle(session.get(), deed.apply(session.get()), now);
  }

  private CheckReply settle(CheckSession session, CheckReply reply, When now) {
    List<CheckEvidence> fresh = new ArrayList<>();
    for (CheckEvidence record : reply.evidence()) {
      fresh.addAll(keep(withConsequences(record)));
    }
    if (session.phase() == Phase.CLOSED) {
      open.tidy();
      waitForReturn(session.subject(), now);
    }
    return new CheckReply(reply.accepted(), fresh, reply.words());
  }

  /** An end of a check qualifies what was measured before it, if it failed as found. */
  private List<CheckEvidence> withConsequences(CheckEvidence record) {
    List<CheckEvidence> all = new ArrayList<>(List.of(record));
    if (record instanceof CheckClosed) {
      List<CheckEvidence> whole = new ArrayList<>(evidence);
      whole.add(record);
      all.addAll(
          BackTrace.ofNewest(
              ProbeHistory.of(record.subject(), whole),
              firstMeasurement.apply(record.subject()),
              zone.get()));
    }
    return all;
  }

  private List<CheckEvidence> keep(List<CheckEvidence> fresh) {
    evidence.addAll(fresh);
    return fresh;
  }

  private void waitForReturn(ProbeHistory.Check check, When now) {
    if (check.closed().isEmpty()
        || check.returned().isPresent()
        || check.started().subject().kind() == CheckSubject.Kind.METER) {
      return;
    }
    double last =
        check.since().stream()
            .filter(StandardMeasured.class::isInstance)
            .map(StandardMeasured.class::cast)
            .mapToDouble(one -> one.result().nominal())
            .reduce(Double.NaN, (a, b) -> b);
    returning.put(
        check.started().subject(),
        new BeakerReturn(check.started(), last, limits, closed(check.closed().get(), now)));
  }

  /** On the clock that never jumps, even if the service was started again since; a day at most. */
  private static When closed(CheckClosed end, When now) {
    long millis = Duration.between(end.at(), now.wall()).toMillis();
    long elapsed = Math.max(0, Math.min(millis, Duration.ofDays(1).toMillis()));
    return new When(now.monotonicNanos() - elapsed * 1_000_000L, end.at());
  }

  /**
   * A reading of a probe; call for each.
   *
   * @param raw as indicated
   * @param at25 as measured, mS/cm at 25 °C; NaN if there is none
   */
  public List<CheckEvidence> reading(CheckSubject subject, ProbeReading raw, double at25) {
    When now = new When(raw.stamp().monotonicNanos(), raw.stamp().wall());
    Optional<CheckSession> session = open.of(subject);
    if (session.isPresent()) {
      return settle(session.get(), session.get().reading(raw), now).evidence();
    }
    BeakerReturn back = returning.get(subject);
    if (back != null) {
      Optional<ProbeReturned> record = back.reading(raw.stamp(), at25);
      record.ifPresent(one -> returning.remove(subject));
      return keep(List.copyOf(record.stream().toList()));
    }
    PlaceWatch place = places.get(subject);
    return place == null
        ? List.of()
        : keep(List.copyOf(place.reading(raw.stamp(), at25, raw.celsius()).stream().toList()));
  }

  /**
   * From now on a probe that is lifted out without a word is recognised.
   *
   * @param airIsNormal whether it often lies dry
   */
  public void watchPlace(CheckSubject subject, boolean airIsNormal) {
    places.put(subject, new PlaceWatch(subject, shelf, airIsNormal));
  }

  /** Time passes; call every few seconds. */
  public List<CheckEvidence> tick(When now) {
    List<CheckEvidence> fresh = new ArrayList<>();
    for (CheckSession session : open.all()) {
      fresh.addAll(settle(session, session.tick(now), now).evidence());
    }
    for (BeakerReturn back : List.copyOf(returning.values())) {
      back.tick(now).ifPresent(record -> fresh.addAll(returned(record)));
    }
    return fresh;
  }

  /** Somebody says that the probe is back in its place. */
  public CheckReply returned(CheckSubject subject, String author, When now) {
    BeakerReturn back = returning.get(subject);
    if (back == null) {
      return CheckReply.refused("%s is not in a beaker, as far as is known".formatted(subject));
    }
    Optional<String> person = Persons.problem(author, "");
    if (person.isPresent()) {
      return CheckReply.refused(person.get());
    }
    Optional<ProbeReturned> record = back.said(author, now);
    return new CheckReply(
        true,
        record.map(this::returned).orElse(List.of()),
        "readings of %s count again".formatted(subject));
  }

  private List<CheckEvidence> returned(ProbeReturned record) {
    returning.remove(record.subject());
    return keep(List.of(record));
  }

  /** Keeps what was made beside a session: a comparison, a cleaning, an adjustment taken back. */
  public CheckReply record(CheckEvidence record) {
    String note =
        record instanceof ProbeCleaned cleaned
            ? cleaned.how()
            : record instanceof ProbeReplaced replaced ? replaced.what() : "";
    Optional<String> person = Persons.problem(record.author(), note);
    if (person.isPresent()) {
      return CheckReply.refused(person.get());
    }
    boolean another = record instanceof CurveAdjusted || record instanceof ProbeReplaced;
    if (another && open.of(record.subject()).isPresent()) {
      return CheckReply.refused(
          "a check of %s is open; finish or abandon it first".formatted(record.subject()));
    }
    return new CheckReply(true, keep(List.of(record)), "kept");
  }

  /** Another probe or cell hangs there from now on. */
  public CheckReply replaced(
      CheckSubject subject, String author, String what, When now, Optional<Mark> mark) {
    CheckReply reply =
        record(new ProbeReplaced(new Entry("", subject, now.wall(), author), what, mark));
    return reply.accepted()
        ? new CheckReply(
            true,
            reply.evidence(),
            "%s is taken as another from now on: chart and interval begin anew, no adjustment is in use; check it"
                .formatted(subject))
        : reply;
  }

  /** Takes the last adjustment back. */
  public CheckReply undo(
      CheckSubject subject, String id, String author, When now, Optional<Mark> mark) {
    return history(subject)
        .undoable()
        .map(last -> record(AdjustmentSum.undo(last, id, author, now, mark)))
        .orElseGet(
            () ->
                CheckReply.refused(
                    "%s has no adjustment of ours that could be taken back".formatted(subject)));
  }

  /** Whether readings of a probe belong to a check: no alarms, nothing mixed with its place. */
  public boolean suppressed(CheckSubject subject) {
    return open.of(subject).isPresent() || returning.containsKey(subject);
  }

  /** Why a probe is thought to be out of its place without a word. */
  public Optional<String> outOfPlace(CheckSubject subject) {
    return Optional.ofNullable(places.get(subject)).flatMap(PlaceWatch::away);
  }

  /** The open check of a probe or meter. */
  public Optional<CheckView> view(CheckSubject subject) {
    return open.of(subject).map(CheckView::of);
  }

  /** All that is on record of a probe or meter. */
  public ProbeHistory history(CheckSubject subject) {
    return ProbeHistory.of(subject, evidence());
  }

  /** With what is on its way to the record. */
  private ProbeHistory everything(CheckSubject subject) {
    return ProbeHistory.of(subject, evidence);
  }

  /**
   * What the last whole check of a probe or meter left behind; can't tell if there is none. For
   * whoever wants to compare something with a meter.
   */
  public Verdict lastVerdict(CheckSubject subject) {
    return history(subject).ofPresentProbe().checks().stream()
        .filter(check -> check.closed().isPresent() && check.lastRound().isPresent())
        .reduce((a, b) -> b)
        .map(ProbeHistory.Check::verdict)
        .orElse(Verdict.CANT_TELL);
  }

  /** All records, oldest first. */
  public List<CheckEvidence> evidence() {
    return evidence.stream().filter(record -> !uncounted.contains(record)).toList();
  }
}
