package feedwitness.ledger;

import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.LongConsumer;
import org.jspecify.annotations.Nullable;

/** Reads what was kept. Safe to call from many threads, during recording as well. */
public interface History {

  /** The last sample of a point in (boot, sequence) order, with a reading or without. */
  Optional<Measurement> latest(PointName point);

  /** The last sample of a point that carried a conductivity. */
  Optional<Measurement> latestReading(PointName point);

  /**
   * The course of a point over {@code from} ≤ time < {@code to}, thinned to at most {@code
   * maxBuckets} buckets; buckets without any sample are left out.
   */
  Course course(PointName point, Instant from, Instant to, int maxBuckets);

  /** Every kept measurement of the range in (boot, sequence) order, in constant memory. */
  void scan(PointName point, Instant from, Instant to, Consumer<Measurement> each);

  /**
   * The minutes of a range of which only roll-ups are kept, because the time of their single
   * readings was up. {@code minute}: takes the start of each that held a reading, ms since 1970
   * UTC.
   */
  default void retired(PointName point, Instant from, Instant to, LongConsumer minute) {
    // a history that keeps every reading
  }

  /** How far {@link #asOf} looks back. */
  Duration LOOK_BACK = Duration.ofDays(1);

  /** The last sample at or before a time, at most {@link #LOOK_BACK} earlier. */
  default Optional<Measurement> asOf(PointName point, Instant at) {
    // The clock of stamps counts milliseconds; the end of a scan is exclusive.
    Instant end = at.truncatedTo(ChronoUnit.MILLIS).plusMillis(1);
    for (Duration back : List.of(Duration.ofMinutes(1), Duration.ofHours(1), LOOK_BACK)) {
      AtomicReference<@Nullable Measurement> last = new AtomicReference<>();
      scan(point, end.minus(back), end, each -> last.set(later(last.get(), each)));
      Measurement found = last.get();
      if (found != null) {
        return Optional.of(found);
      }
    }
    return Optional.empty();
  }

  private static Measurement later(@Nullable Measurement before, Measurement each) {
    return before == null || before.stamp().wallMillis() <= each.stamp().wallMillis()
        ? each
        : before;
  }

  /** What to say where {@link #asOf} finds nothing. */
  static String nothing(PointName point, Instant at) {
    return "nothing was recorded at %s in the %d h before %s; ask for a time at which the history shows a reading"
        .formatted(point, LOOK_BACK.toHours(), at);
  }

  /** Points of which anything is on disk, by name; those no longer in the configuration too. */
  List<PointName> recorded();

  /** Wall time of the youngest kept sample of any point. */
  Optional<Instant> newest();

  /**
   * A thinned course.
   *
   * @param bucketWidth of every bucket; {@link Duration#ZERO} if each is one single sample
   */
  record Course(Duration bucketWidth, List<Bucket> buckets) {
    public Course {
      buckets = List.copyOf(buckets);
    }
  }
}
