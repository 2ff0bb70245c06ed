package feedwitness.engine;

import feedwitness.check.CheckClosed;
import feedwitness.check.CurveAdjusted;
import feedwitness.check.ProbeCleaned;
import feedwitness.check.StandardMeasured;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.ledger.History;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.sample.Indication;
import feedwitness.site.FeedLine;
import feedwitness.site.Site;
import feedwitness.watch.drift.DriftFinding;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * A feed line's watch over what is stored: readings as they came and what was done, in the order in
 * which they came, by the present configuration. Beginning with the first reading it gives what the
 * live watch gave. What was imported was never watched and is left out, and so is what has no date.
 * Memory does not grow with the length. For one thread.
 */
public final class LineReplay {
  /** Points are read one after the other, so much at a time. */
  private static final Duration PIECE = Duration.ofHours(2);

  private static final int BUCKETS = 1000;
  private static final int PAGE = 1000;
  private static final String[] KINDS = {
    JournalNote.KIND,
    StandardMeasured.KIND,
    CheckClosed.KIND,
    ProbeCleaned.KIND,
    CurveAdjusted.KIND,
    FeedingBook.KIND,
    FeedingBook.STRENGTH_KIND
  };
  private static final Comparator<Stamp> ORDER =
      Comparator.comparingInt(Stamp::boot).thenComparingLong(Stamp::sequence);

  private final FeedLine line;
  private final Site site;
  private final History history;
  private final EvidenceHistory records;
  private long readings;
  private Optional<Instant> first = Optional.empty();
  private Optional<Instant> last = Optional.empty();

  /**
   * @param line one of the site's
   */
  public LineReplay(FeedLine line, Site site, History history, EvidenceHistory records) {
    this.line = FeedLineWatch.withStrengths(line, site);
    this.site = site;
    this.history = history;
    this.records = records;
  }

  /** Something that happened, in the order of the service. */
  private record Happening(Stamp at, Optional<Measurement> reading, Optional<Evidence> deed) {}

  /** Goes through {@code from} ≤ time < {@code to}; from the first reading to the last if empty. */
  private void run(Optional<Instant> from, Optional<Instant> to, Consumer<DriftFinding> found) {
    Optional<Instant> begin = from.or(this::oldest);
    Optional<Instant> end = to.or(() -> history.newest().map(at -> at.plusSeconds(1)));
    if (begin.isEmpty() || end.isEmpty()) {
      return;
    }
    LineRun run = new LineRun(line, site, records, lastBefore(begin.get()));
    for (Instant at = begin.get(); at.isBefore(end.get()); at = at.plus(PIECE)) {
      Instant next = at.plus(PIECE);
      for (Happening each : piece(at, next.isBefore(end.get()) ? next : end.get())) {
        each.reading().map(run::take).orElseGet(List::of).forEach(found);
        each.deed().map(deed -> run.apply(deed, each.at())).orElseGet(List::of).forEach(found);
      }
    }
  }

  /** The same, all findings at once. */
  public FeedLineDesk.Replayed run(Optional<Instant> from, Optional<Instant> to) {
    List<DriftFinding> found = new ArrayList<>();
    run(from, to, found::add);
    return new FeedLineDesk.Replayed(found, summary());
  }

  private long lastBefore(Instant time) {
    List<Evidence> before = records.evidence(EvidenceQuery.newest(1).within(Instant.EPOCH, time));
    return before.isEmpty() ? 0 : before.get(0).id();
  }

  /** When the first reading of the line was taken, to some minutes before. */
  private Optional<Instant> oldest() {
    Optional<Instant> newest = history.newest();
    if (newest.isEmpty()) {
      return newest;
    }
    Instant begin = Instant.EPOCH;
    Instant end = newest.get().plusSeconds(1);
    for (int i = 0; i < 2; i++) {
      History.Course course = history.course(line.line(), begin, end, BUCKETS);
      if (course.buckets().isEmpty()) {
        return Optional.empty();
      }
      begin = course.buckets().get(0).start();
      Instant after = begin.plus(course.bucketWidth()).plusSeconds(1);
      end = after.isBefore(end) ? after : end;
    }
    return Optional.of(begin);
  }

  private List<Happening> piece(Instant from, Instant to) {
    List<Happening> all = new ArrayList<>();
    Stream.of(Optional.of(line.line()), line.source(), line.secondProbe())
        .flatMap(Optional::stream)
        .distinct()
        .forEach(point -> readings(point, from, to, all));
    for (Evidence deed : deeds(from, to)) {
      all.add(new Happening(deed.at(), Optional.empty(), Optional.of(deed)));
    }
    // a record carries the sequence of the last sample before it
    all.sort(
        Comparator.comparing(Happening::at, ORDER)
            .thenComparing(happening -> happening.deed().isPresent()));
    return all;
  }

  private void readings(PointName point, Instant from, Instant to, List<Happening> all) {
    history.scan(
        point,
        from,
        to,
        reading -> {
          boolean imported =
              reading.sample() instanceof Indication one
                  && one.origin() == Indication.Origin.IMPORTED;
          if (!imported) {
            all.add(new Happening(reading.stamp(), Optional.of(reading), Optional.empty()));
            if (point.equals(line.line())) {
              readings++;
              first = first.or(() -> Optional.of(reading.stamp().wall()));
              last = Optional.of(reading.stamp().wall());
            }
          }
        });
  }

  private List<Evidence> deeds(Instant from, Instant to) {
    return records.evidence(
        EvidenceQuery.after(0, PAGE, KINDS).about(line.line().text()).within(from, to));
  }

  private String summary() {
    return first.isEmpty()
        ? "No readings of %s are stored in that time.".formatted(line.line())
        : "%d readings of %s from %s to %s."
            .formatted(readings, line.line(), first.get(), last.orElseThrow());
  }
}
