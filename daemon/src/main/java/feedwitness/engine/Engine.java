package feedwitness.engine;

import feedwitness.calibration.CalibrationCurve;
import feedwitness.ledger.History;
import feedwitness.ledger.MeasurementLedger;
import feedwitness.measurement.Basis;
import feedwitness.measurement.Measurement;
import feedwitness.measurement.MeasurementChain;
import feedwitness.quality.Qualification;
import feedwitness.quantity.Octets;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Indication;
import feedwitness.sample.Sample;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.tinylog.Logger;

/**
 * The one loop: samples in, measurements to the ledger and to whoever listens, all on one thread.
 * When the ledger's queue is full the loop waits for it, and the {@link Intake} takes up what
 * comes.
 */
public final class Engine implements LiveView, AutoCloseable {
  private static final int IDLE_MILLIS = 200;
  private static final int TYPED_PATIENCE_SECONDS = 10;
  private static final int STOP_PATIENCE_MILLIS = 20_000;
  private static final long TICK_NANOS = 1_000_000_000L;

  private static final String UNDATED =
      "the clock is not known to be right, so readings are kept without a date; they get it once a"
          + " time service has set the clock (write trust = \"always\" under [clock] if it is right"
          + " from the start)";

  private final Intake intake;
  private final MeasurementLedger ledger;
  private final Consumer<Qualification> qualifications;
  private final TimeSource clock;
  private final Board board;
  private final Messages messages = new Messages();
  private final Judges judges = new Judges();
  private final int boot;
  private final Instant startedAt;
  private final String version;
  private final List<Consumer<Measurement>> listeners = new CopyOnWriteArrayList<>();
  private final List<EngineWatcher> watchers = new CopyOnWriteArrayList<>();
  private final Thread thread = new Thread(this::loop, "engine");
  private volatile UnaryOperator<Measurement> marker = UnaryOperator.identity();
  private long tickedNanos = Long.MIN_VALUE;
  private volatile long sequence;
  private volatile boolean stopping;
  private volatile @Nullable String fault;

  /** Without anybody to keep what is said of earlier readings. */
  public Engine(
      int boot,
      String version,
      Site site,
      Intake intake,
      MeasurementLedger ledger,
      History history,
      TimeSource clock) {
    this(boot, version, site, intake, ledger, history, clock, qualification -> {});
  }

  /**
   * @param qualifications is told on the engine's thread what a reading gives reason to say of
   *     those before it, after that reading itself went to the ledger
   */
  public Engine(
      int boot,
      String version,
      Site site,
      Intake intake,
      MeasurementLedger ledger,
      History history,
      TimeSource clock,
      Consumer<Qualification> qualifications) {
    this.qualifications = qualifications;
    this.boot = boot;
    this.version = version;
    this.intake = intake;
    this.ledger = ledger;
    this.clock = clock;
    this.board = new Board(site, history);
    this.startedAt = clock.wall();
  }

  /** Lets somebody follow; before {@link #start()}. */
  public void watch(EngineWatcher watcher) {
    watchers.add(watcher);
  }

  /**
   * Lets somebody mark what probes say before it is kept; before {@link #start()}.
   *
   * @param how is asked on the engine's thread and must return at once
   */
  public void markBy(UnaryOperator<Measurement> how) {
    marker = how;
  }

  /** What the probe of a point says is calibrated by another curve from now on. */
  public void calibrate(PointName point, CalibrationCurve curve) {
    board.calibrate(point, curve);
  }

  /**
   * What a measurement of the probe of a point is based on now; empty if there is no such point.
   */
  public Optional<Basis> basis(PointName point) {
    return board.basis(point, clock.wall());
  }

  public void start() {
    thread.start();
  }

  private void loop() {
    try {
      while (true) {
        Intake.Entry entry = intake.poll(IDLE_MILLIS);
        if (entry != null) {
          measureAll(entry);
        } else if (stopping) {
          return;
        }
        tickBy(stampNow());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /**
   * Measures all that is queued on the caller's thread; for a replay, instead of {@link #start()}.
   */
  public void drain() {
    for (Intake.Entry entry = intake.poll(); entry != null; entry = intake.poll()) {
      measureAll(entry);
      // a replay goes by the time of what it replays
      tickBy(entry.samples().get(entry.samples().size() - 1).stamp());
    }
  }

  /** Now, after the last sample that was measured. */
  public Stamp stampNow() {
    return new Stamp(
        boot, sequence, clock.monotonicNanos(), clock.wall().toEpochMilli(), intake.dates());
  }

  /** Whether samples get a date now. */
  public boolean dates() {
    return intake.dates();
  }

  private void tickBy(Stamp now) {
    if (tickedNanos != Long.MIN_VALUE && now.monotonicNanos() - tickedNanos < TICK_NANOS) {
      return;
    }
    tickedNanos = now.monotonicNanos();
    tellWatchers(watcher -> watcher.tick(now));
  }

  private void tellWatchers(Consumer<EngineWatcher> what) {
    for (EngineWatcher watcher : watchers) {
      try {
        what.accept(watcher);
      } catch (RuntimeException e) {
        // Readings go on whatever happens in those who watch them; a fault each second is told
        // once.
        String words = "what watches over the readings failed: %s".formatted(e);
        if (!words.equals(fault)) {
          Logger.error(e, "a watcher failed");
        }
        fault = words;
      }
    }
  }

  private void measureAll(Intake.Entry entry) {
    Consumer<Measurement> done = entry.done();
    int last = entry.samples().size() - 1;
    for (int i = 0; i <= last; i++) {
      measure(entry, entry.samples().get(i), i == last ? done : null);
    }
  }

  private void measure(Intake.Entry entry, Sample sample, @Nullable Consumer<Measurement> done) {
    try {
      Basis own = entry.ownBasis();
      Optional<Basis> basis =
          own != null ? Optional.of(own) : board.basis(sample.point(), sample.stamp().wall());
      if (basis.isEmpty()) {
        return;
      }
      boolean imported = sample instanceof Indication i && i.origin() == Indication.Origin.IMPORTED;
      Measurement plain = MeasurementChain.measure(sample, basis.get());
      Judges.Judged judged =
          imported ? new Judges.Judged(plain, List.of()) : judges.judge(plain, board.site());
      Measurement measurement = marker.apply(judged.measurement());
      ledger.append(measurement);
      judged.earlier().forEach(qualifications);
      sequence = measurement.stamp().sequence();
      if (!imported) {
        messages.remember(sample, entry.messages());
        board.post(measurement);
      }
      if (done != null) {
        done.accept(measurement);
      }
      if (imported) {
        // a reading of last year is no news
        return;
      }
      tellWatchers(watcher -> watcher.measured(measurement));
      listeners.forEach(listener -> listener.accept(measurement));
    } catch (RuntimeException e) {
      // A bug in one measurement must not end the watch over all the others.
      fault = "a measurement of %s failed: %s".formatted(sample.point(), e);
      Logger.error(e, "a measurement of {} failed", sample.point());
    }
  }

  /** The configuration changed; readings of points no longer in it are let go. */
  public void follow(Site changed) {
    board.follow(changed);
    messages.forgetAllBut(changed);
    tellWatchers(watcher -> watcher.follow(changed));
  }

  @Override
  public Site site() {
    return board.site();
  }

  @Override
  public List<PointStatus> points() {
    return board.all();
  }

  @Override
  public Optional<PointStatus> point(PointName name) {
    return board.one(name);
  }

  @Override
  public Subscription subscribe(Consumer<Measurement> listener) {
    listeners.add(listener);
    return () -> listeners.remove(listener);
  }

  @Override
  public TypedOutcome type(TypedReading typed) {
    Optional<MeasuringPoint> point =
        site().points().stream().filter(p -> p.name().equals(typed.point())).findFirst();
    if (point.isEmpty()) {
      return new TypedOutcome.Refused("point", "there is no point " + typed.point());
    }
    Optional<TypedOutcome.Refused> refused = TypedCheck.of(typed, point.get());
    if (refused.isPresent()) {
      return refused.get();
    }
    CompletableFuture<Measurement> done = new CompletableFuture<>();
    boolean taken =
        intake.offer(
            stamp -> new Indication(typed.point(), stamp, typed.reading(), Indication.Origin.TYPED),
            List.of(),
            board.typedBasis(typed, clock.wall()),
            done::complete);
    try {
      if (taken) {
        return new TypedOutcome.Accepted(done.get(TYPED_PATIENCE_SECONDS, TimeUnit.SECONDS));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (ExecutionException | TimeoutException e) {
      Logger.warn("a reading typed for {} was not measured in time", typed.point());
    }
    return new TypedOutcome.Refused(
        "point", "the service is busy; look at the page's first line, then type it again");
  }

  @Override
  public List<Octets> messages(PointName point, Stamp stamp) {
    return messages.of(point, stamp);
  }

  @Override
  public Health health() {
    List<String> trouble = new ArrayList<>();
    ledger.trouble().ifPresent(trouble::add);
    String known = fault;
    if (known != null) {
      trouble.add(known);
    }
    if (!intake.dates()) {
      trouble.add(UNDATED);
    }
    if (intake.dropped() > 0) {
      trouble.add(
          "%d samples were lost because the service could not keep up; look at the log"
              .formatted(intake.dropped()));
    }
    return new Health(boot, startedAt, ledger.durableThrough(), trouble, intake.dropped(), version);
  }

  @Override
  public Instant now() {
    return clock.wall();
  }

  /** Measures what is queued, then ends. Sessions must have stopped before. */
  @Override
  public void close() {
    stopping = true;
    try {
      thread.join(STOP_PATIENCE_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
