package feedwitness.ledger;

import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

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
