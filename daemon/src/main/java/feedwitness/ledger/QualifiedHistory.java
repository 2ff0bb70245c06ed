package feedwitness.ledger;

import feedwitness.measurement.Measurement;
import feedwitness.quality.Flags;
import feedwitness.quantity.PointName;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** A history with what was said of it later: flags are added to answers, nothing is rewritten. */
public final class QualifiedHistory implements History {

  private final History history;
  private final Afterthoughts later;

  /** A history of a service that is stopped, with all that was said of it. */
  public static <H extends History & EvidenceHistory> QualifiedHistory of(H stored) {
    Afterthoughts later = new Afterthoughts();
    later.load(stored);
    return new QualifiedHistory(stored, later);
  }

  public QualifiedHistory(History history, Afterthoughts later) {
    this.history = history;
    this.later = later;
  }

  @Override
  public Optional<Measurement> latest(PointName point) {
    return history.latest(point).map(later::apply);
  }

  @Override
  public Optional<Measurement> latestReading(PointName point) {
    return history.latestReading(point).map(later::apply);
  }

  @Override
  public Course course(PointName point, Instant from, Instant to, int maxBuckets) {
    Course course = history.course(point, from, to, maxBuckets);
    List<Afterthought> said = later.touching(point, from, to);
    if (said.isEmpty()) {
      return course;
    }
    List<Bucket> buckets =
        course.buckets().stream().map(b -> qualified(b, course.bucketWidth(), said)).toList();
    return new Course(course.bucketWidth(), buckets);
  }

  private static Bucket qualified(Bucket bucket, Duration width, List<Afterthought> said) {
    if (bucket.readings() == 0) {
      return bucket;
    }
    Instant end = bucket.start().plus(width.isZero() ? Duration.ofMillis(1) : width);
    Flags flags = bucket.flags();
    for (Afterthought each : said) {
      if (each.touches(bucket.start(), end)) {
        flags = width.isZero() ? flags.withLater(each.flags()) : flags.with(each.flags());
      }
    }
    return new Bucket(
        bucket.start(),
        bucket.meanMilliSiemensPerCm(),
        bucket.minMilliSiemensPerCm(),
        bucket.maxMilliSiemensPerCm(),
        bucket.meanCelsius(),
        bucket.readings(),
        bucket.missing(),
        flags);
  }

  @Override
  public void scan(PointName point, Instant from, Instant to, Consumer<Measurement> each) {
    // by boot and sequence, not by time: what is undated is spoken of as well
    List<Afterthought> said = later.said(point);
    if (said.isEmpty()) {
      history.scan(point, from, to, each);
      return;
    }
    Afterthoughts.Cursor cursor = new Afterthoughts.Cursor(said);
    history.scan(point, from, to, m -> each.accept(cursor.apply(m)));
  }

  @Override
  public List<String> saidLater(Measurement measurement) {
    return later.of(measurement).stream().map(Afterthought::words).toList();
  }

  @Override
  public List<PointName> recorded() {
    return history.recorded();
  }

  @Override
  public Optional<Instant> newest() {
    return history.newest();
  }
}
