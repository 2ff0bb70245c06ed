package feedwitness.engine;

import feedwitness.check.Mark;
import feedwitness.ledger.Bucket;
import feedwitness.ledger.History;
import feedwitness.quantity.PointName;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** When a point was first measured, found in a few looks at ever smaller stretches. */
final class FirstReading {
  private static final Instant BEFORE_ALL = Instant.parse("2000-01-01T00:00:00Z");
  private static final Duration FINE = Duration.ofHours(1);
  private static final int BUCKETS = 60;
  private static final int LOOKS = 12;

  private FirstReading() {}

  /** A mark before every record of the point, at the time of the first; empty if there is none. */
  static Optional<Mark> of(History history, PointName point, Instant now) {
    Instant from = BEFORE_ALL;
    Instant to = now.plusSeconds(1);
    boolean found = false;
    for (int i = 0; i < LOOKS && Duration.between(from, to).compareTo(FINE) > 0; i++) {
      History.Course course = history.course(point, from, to, BUCKETS);
      List<Bucket> held = course.buckets().stream().filter(b -> b.readings() > 0).toList();
      if (held.isEmpty()) {
        break;
      }
      found = true;
      Instant start = held.get(0).start();
      Instant end = start.plus(course.bucketWidth());
      boolean narrower = start.isAfter(from) || end.isBefore(to);
      from = start.isAfter(from) ? start : from;
      to = end.isBefore(to) ? end : to;
      if (!narrower || course.bucketWidth().isZero()) {
        break;
      }
    }
    return found ? Optional.of(new Mark(1, 0, from)) : Optional.empty();
  }
}
