package feedwitness.engine;

import feedwitness.ledger.History;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Indication;
import feedwitness.sample.Reading;
import feedwitness.site.MeasuringPoint;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;

/**
 * Brings readings from elsewhere into the one pipeline: they get their place in (boot, sequence)
 * when they are taken in, keep their own time, and pass through the engine's thread like all
 * others. One batch at a time, so that two imports of one file cannot both find it new.
 */
public final class Importer {
  private static final int PATIENCE_SECONDS = 60;
  private static final long HOUR_MILLIS = 3_600_000;
  private static final long MINUTE_MILLIS = 60_000;

  /** Nobody fed plants by a probe before; also keeps times within what the store orders. */
  private static final long EARLIEST_MILLIS = Instant.parse("1970-01-01T00:00:00Z").toEpochMilli();

  private static final long LATEST_MILLIS = Instant.parse("2100-01-01T00:00:00Z").toEpochMilli();

  private final Intake intake;
  private final Engine engine;
  private final History history;
  private final TimeSource clock;
  private final Supplier<Optional<String>> halted;

  /** {@code halted}: why nothing is being written at the moment; empty while all is well. */
  public Importer(
      Intake intake,
      Engine engine,
      History history,
      TimeSource clock,
      Supplier<Optional<String>> halted) {
    this.halted = halted;
    this.intake = intake;
    this.engine = engine;
    this.history = history;
    this.clock = clock;
  }

  /** See {@link DataDesk#take}. */
  public synchronized ImportOutcome take(ImportBatch batch) {
    Optional<MeasuringPoint> point =
        engine.site().points().stream().filter(p -> p.name().equals(batch.point())).findFirst();
    if (point.isEmpty()) {
      return new ImportOutcome.Refused(
          "point",
          "there is no measuring point %s; set it up first, as one without a probe if it is only for old readings"
              .formatted(batch.point()));
    }
    Optional<ImportOutcome.Refused> refused = refusal(batch);
    if (refused.isPresent()) {
      return refused.get();
    }
    Optional<String> before = halted.get();
    if (before.isPresent()) {
      return notRecorded(before.get());
    }
    Set<Same> known = known(batch);
    Set<Long> retired = retired(batch);
    int leftOut = 0;
    List<Reading> readings = new ArrayList<>();
    List<Long> times = new ArrayList<>();
    for (ImportBatch.Row row : batch.rows()) {
      if (retired.contains(minute(row.millis()))) {
        leftOut++;
        continue;
      }
      Reading reading =
          new Reading(
              row.conductivity(),
              batch.conductivityUnit(),
              row.temperature(),
              batch.temperatureUnit());
      if (known.add(Same.of(row.millis(), reading))) {
        readings.add(reading);
        times.add(row.millis());
      }
    }
    int there = batch.rows().size() - readings.size() - leftOut;
    if (readings.isEmpty()) {
      return new ImportOutcome.Taken(0, there, leftOut, 0, 0);
    }
    return append(batch, point.get(), times, readings, there, leftOut);
  }

  private ImportOutcome append(
      ImportBatch batch,
      MeasuringPoint point,
      List<Long> times,
      List<Reading> readings,
      int there,
      int retired) {
    CompletableFuture<Measurement> done = new CompletableFuture<>();
    boolean taken =
        intake.offerAll(
            readings.size(),
            (stamp, i) -> indication(batch.point(), stamp, times.get(i), readings.get(i)),
            Bases.ofImported(point, batch.compensated()),
            done::complete);
    try {
      if (taken) {
        Stamp last = done.get(PATIENCE_SECONDS, TimeUnit.SECONDS).stamp();
        Optional<String> meanwhile = halted.get();
        if (meanwhile.isPresent()) {
          return notRecorded(meanwhile.get());
        }
        return new ImportOutcome.Taken(
            readings.size(), there, retired, last.boot(), last.sequence());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (ExecutionException | TimeoutException e) {
      return new ImportOutcome.Refused(
          "rows",
          "the readings were not written within %d s; look at the log of the service, then import again: what is there already is found"
              .formatted(PATIENCE_SECONDS));
    }
    return new ImportOutcome.Refused(
        "rows", "the service is busy; import again in a minute: what is there already is found");
  }

  private static ImportOutcome.Refused notRecorded(String why) {
    return new ImportOutcome.Refused(
        "rows", why + "; import again when it records: what is there already is found");
  }

  /** Its own time; the clock that never jumps says only when it was taken in. */
  private static Indication indication(PointName point, Stamp stamp, long millis, Reading reading) {
    return new Indication(
        point,
        new Stamp(stamp.boot(), stamp.sequence(), stamp.monotonicNanos(), millis, true),
        reading,
        Indication.Origin.IMPORTED);
  }

  private Optional<ImportOutcome.Refused> refusal(ImportBatch batch) {
    if (batch.rows().isEmpty() || batch.rows().size() > ImportBatch.MOST_ROWS) {
      return refuse(
          "%d rows are not 1 to %d".formatted(batch.rows().size(), ImportBatch.MOST_ROWS));
    }
    long latest =
        batch.allowFuture()
            ? LATEST_MILLIS
            : clock.wall().toEpochMilli() + ImportBatch.FUTURE_MILLIS;
    for (ImportBatch.Row row : batch.rows()) {
      if (row.millis() < EARLIEST_MILLIS || row.millis() >= latest) {
        return refuse(
            "time %s is outside 1970 to %s; check the clock of the recorder"
                .formatted(
                    Instant.ofEpochMilli(row.millis()),
                    batch.allowFuture() ? "2099" : "now, " + clock.wall()));
      }
      if (!(row.conductivity() >= 0) || Double.isInfinite(row.conductivity())) {
        return refuse("conductivity %s is negative or no number".formatted(row.conductivity()));
      }
    }
    return Optional.empty();
  }

  private static Optional<ImportOutcome.Refused> refuse(String message) {
    return Optional.of(new ImportOutcome.Refused("rows", message));
  }

  /** What the history has at the hours of the batch; no more than those hours are looked at. */
  private Set<Same> known(ImportBatch batch) {
    Set<Long> times = new HashSet<>();
    batch.rows().forEach(row -> times.add(row.millis()));
    Set<Same> known = new HashSet<>();
    for (Span span : spans(batch)) {
      history.scan(
          batch.point(),
          span.from(),
          span.to(),
          measurement -> {
            long millis = measurement.stamp().wallMillis();
            if (times.contains(millis) && measurement.sample() instanceof Indication indication) {
              known.add(Same.of(millis, indication.reading()));
            }
          });
    }
    return known;
  }

  /** Minutes of the batch of which nobody can tell any more whether a reading is known. */
  private Set<Long> retired(ImportBatch batch) {
    Set<Long> minutes = new HashSet<>();
    for (Span span : spans(batch)) {
      history.retired(batch.point(), span.from(), span.to(), millis -> minutes.add(minute(millis)));
    }
    return minutes;
  }

  private static long minute(long millis) {
    return Math.floorDiv(millis, MINUTE_MILLIS);
  }

  private record Span(Instant from, Instant to) {}

  /** The hours of a batch, those next to each other together. */
  private static List<Span> spans(ImportBatch batch) {
    TreeSet<Long> hours = new TreeSet<>();
    for (ImportBatch.Row row : batch.rows()) {
      hours.add(Math.floorDiv(row.millis(), HOUR_MILLIS));
    }
    List<Span> spans = new ArrayList<>();
    while (!hours.isEmpty()) {
      long first = hours.pollFirst();
      long end = first + 1;
      while (!hours.isEmpty() && hours.first() == end) {
        hours.pollFirst();
        end++;
      }
      spans.add(
          new Span(
              Instant.ofEpochMilli(first * HOUR_MILLIS), Instant.ofEpochMilli(end * HOUR_MILLIS)));
    }
    return spans;
  }

  /**
   * What makes two readings of a point the same: time, mS/cm to a millionth, °C to a thousandth.
   */
  private record Same(long millis, long nanoSiemens, long milliKelvin) {
    static Same of(long millis, Reading reading) {
      double celsius = reading.temperatureCelsius();
      return new Same(
          millis,
          Math.round(reading.conductivityMilliSiemensPerCm() * 1e6),
          Double.isNaN(celsius) ? Long.MIN_VALUE : Math.round(celsius * 1e3));
    }
  }
}
