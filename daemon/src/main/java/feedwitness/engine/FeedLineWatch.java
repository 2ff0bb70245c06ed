package feedwitness.engine;

import feedwitness.alarm.Condition;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceLedger;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.ledger.History;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.site.FeedLine;
import feedwitness.site.Site;
import feedwitness.site.StrengthOf;
import feedwitness.watch.drift.DriftFinding;
import feedwitness.watch.drift.LineChange;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.tinylog.Logger;

/**
 * Hands each feed line's watch the measurements of its points in order, puts findings on record and
 * reports them as alarms. Called by the engine's thread and by whoever logs a change; the lock is
 * held for memory work only.
 */
public final class FeedLineWatch implements EngineWatcher, FeedLineDesk {
  private static final String STATE = "feed-line:";

  /** A stop keeps all; a power cut loses so much, less than a pause in an irrigation event. */
  private static final long KEEP_NANOS = Duration.ofMinutes(1).toNanos();

  /** Checks and what runs are looked up so often. */
  private static final long CATCH_UP_NANOS = Duration.ofSeconds(30).toNanos();

  private final EvidenceLedger ledger;
  private final EvidenceHistory history;
  private final History readings;
  private final Recorder recorder;
  private final Supplier<Stamp> clock;
  private final Consumer<Condition> alarms;
  private final Map<PointName, LineRun> runs = new LinkedHashMap<>();
  private Site site;
  private long keptNanos;
  private long caughtUpNanos;
  private boolean changed;

  /**
   * Starts from what was kept.
   *
   * @param clock stamps what happens
   * @param readings as they came, for replays
   * @param alarms is told every condition whenever it is judged
   */
  public FeedLineWatch(
      Site site,
      Supplier<Stamp> clock,
      EvidenceLedger ledger,
      EvidenceHistory history,
      History readings,
      Consumer<Condition> alarms) {
    this.ledger = ledger;
    this.history = history;
    this.readings = readings;
    this.recorder = new Recorder(ledger);
    this.clock = clock;
    this.alarms = alarms;
    this.keptNanos = clock.get().monotonicNanos();
    this.caughtUpNanos = keptNanos;
    this.site = site;
    follow(site);
  }

  @Override
  public void measured(Measurement measurement) {
    List<Condition> conditions = new ArrayList<>();
    synchronized (this) {
      for (LineRun run : runs.values()) {
        List<DriftFinding> found = run.take(measurement);
        if (!found.isEmpty()) {
          record(found, measurement.stamp());
          conditions.addAll(run.conditions());
          keep(run);
        }
      }
      changed = true;
    }
    conditions.forEach(alarms);
  }

  private void record(List<DriftFinding> found, Stamp at) {
    for (DriftFinding finding : found) {
      Logger.info("{}", finding.words());
      recorder.record(at, LineRecords.finding(finding));
    }
  }

  @Override
  public void tick(Stamp now) {
    List<Condition> conditions = new ArrayList<>();
    synchronized (this) {
      if (now.monotonicNanos() - caughtUpNanos >= CATCH_UP_NANOS) {
        caughtUpNanos = now.monotonicNanos();
        runs.values().forEach(run -> record(run.catchUp(now), now));
      }
      runs.values().forEach(run -> conditions.addAll(run.conditions()));
      if (changed && now.monotonicNanos() - keptNanos >= KEEP_NANOS) {
        keptNanos = now.monotonicNanos();
        keep();
      }
    }
    conditions.forEach(alarms);
  }

  /** Keeps what is known; also to be called when the engine has stopped and before the store. */
  public synchronized void keep() {
    runs.values().forEach(this::keep);
    changed = false;
  }

  private void keep(LineRun run) {
    ledger.keepState(STATE + run.line().name(), run.text());
  }

  @Override
  public synchronized void follow(Site changed) {
    site = changed;
    Map<PointName, LineRun> before = new LinkedHashMap<>(runs);
    runs.clear();
    for (FeedLine configured : site.feedLines()) {
      FeedLine line = withStrengths(configured, site);
      LineRun known = before.get(line.name());
      runs.put(
          line.name(),
          known != null && known.line().equals(line)
              ? known
              : resume(
                  line,
                  site,
                  known != null ? Optional.of(known.text()) : history.state(STATE + line.name())));
    }
  }

  private LineRun resume(FeedLine line, Site site, Optional<String> kept) {
    try {
      return kept.map(text -> LineRun.resume(line, site, history, text))
          .orElseGet(() -> anew(line, site));
    } catch (IllegalArgumentException e) {
      Logger.warn("feed line {} learns anew what is normal: {}", line.name(), e.getMessage());
      Stamp now = clock.get();
      recorder.record(now, LineRecords.anew(line, String.valueOf(e.getMessage()), now.wall()));
      return anew(line, site);
    }
  }

  private LineRun anew(FeedLine line, Site site) {
    List<Evidence> newest = history.evidence(EvidenceQuery.newest(1));
    return new LineRun(line, site, history, newest.isEmpty() ? 0 : newest.get(0).id());
  }

  /** A line that lists no strengths of its own is fed what the nursery feeds at its point. */
  static FeedLine withStrengths(FeedLine line, Site site) {
    if (!line.strengths().isEmpty()) {
      return line;
    }
    try {
      return line.withStrengths(
          strengths(line, site, StrengthOf.TOTAL), strengths(line, site, StrengthOf.ADDED));
    } catch (IllegalArgumentException e) {
      Logger.warn("feed line {} learns its strengths: {}", line.name(), e.getMessage());
      return line;
    }
  }

  private static List<Double> strengths(FeedLine line, Site site, StrengthOf of) {
    return site.strengths().stream()
        .filter(each -> each.of() == of && each.isFedAt(line.line()))
        .map(each -> each.milliSiemensPerCm())
        .toList();
  }

  @Override
  public synchronized List<FeedLineStatus> feedLines() {
    return runs.values().stream().map(LineRun::status).toList();
  }

  @Override
  public synchronized Optional<FeedLineStatus> feedLine(PointName name) {
    return Optional.ofNullable(runs.get(name)).map(LineRun::status);
  }

  @Override
  public Optional<Replayed> replay(PointName name, Optional<Instant> from, Optional<Instant> to) {
    LineReplay replay;
    synchronized (this) {
      LineRun run = runs.get(name);
      if (run == null) {
        return Optional.empty();
      }
      replay = new LineReplay(run.line(), site, readings, history);
    }
    return Optional.of(replay.run(from, to));
  }

  @Override
  public Optional<FeedLineStatus> change(PointName name, LineChange change, String who, String note)
      throws IOException {
    Optional<FeedLineStatus> there = feedLine(name);
    if (there.isEmpty()) {
      return there;
    }
    recorder.recordNow(clock.get(), LineRecords.change(there.get().line(), change, who, note));
    List<Condition> conditions;
    FeedLineStatus status;
    synchronized (this) {
      LineRun run = runs.get(name);
      if (run == null) {
        return Optional.empty();
      }
      Stamp now = clock.get();
      record(run.note(change, now), now);
      conditions = run.conditions();
      status = run.status();
      keep(run);
    }
    conditions.forEach(alarms);
    return Optional.of(status);
  }
}
