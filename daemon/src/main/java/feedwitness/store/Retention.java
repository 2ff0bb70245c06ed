package feedwitness.store;

import feedwitness.quantity.TimeSource;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Optional;

/**
 * Lets go of single samples after their time, a few hours at a go; roll-ups stay. A wall clock that
 * jumped must not cost a history: nothing is let go of until the clock has gone evenly, and been
 * trusted, for an hour. Writer only.
 */
final class Retention {
  private static final Duration EVENLY = Duration.ofHours(1);
  private static final Duration BETWEEN_STEPS = Duration.ofMinutes(1);
  private static final Duration UNEVEN = Duration.ofMinutes(1);

  /** Hours of one point. */
  private static final int STEP = 24;

  private final Optional<Duration> keep;
  private final TimeSource time;
  private boolean running;
  private long sinceNanos;
  private Instant sinceWall = Instant.EPOCH;
  private long nextNanos;

  Retention(Optional<Duration> keep, TimeSource time) {
    this.keep = keep;
    this.time = time;
  }

  /**
   * Does a step if one is due, and commits it.
   *
   * @param trusted whether the latest sample was dated
   * @return how many hours of points were let go of
   */
  int step(Connection connection, Collection<Integer> points, Dating dating, boolean trusted)
      throws SQLException {
    if (keep.isEmpty() || !evenly(trusted)) {
      return 0;
    }
    long now = time.monotonicNanos();
    if (now - nextNanos < 0) {
      return 0;
    }
    nextNanos = now + BETWEEN_STEPS.toNanos();
    long before = time.wall().minus(keep.get()).toEpochMilli();
    int gone = 0;
    for (int point : points) {
      gone += dated(connection, point, before) + datedLater(connection, dating, point, before);
    }
    connection.commit();
    return gone;
  }

  private boolean evenly(boolean trusted) {
    long nanos = time.monotonicNanos();
    Instant wall = time.wall();
    Instant expected = sinceWall.plusNanos(nanos - sinceNanos);
    if (!running || !trusted || Duration.between(expected, wall).abs().compareTo(UNEVEN) > 0) {
      running = trusted;
      sinceNanos = nanos;
      sinceWall = wall;
      nextNanos = nanos;
      return false;
    }
    return nanos - sinceNanos >= EVENLY.toNanos();
  }

  /** Hours that were dated from the beginning: their keys are in the order of time. */
  private static int dated(Connection connection, int point, long before) throws SQLException {
    try (PreparedStatement delete =
        connection.prepareStatement(
            "delete from chunk where k >= ? and k < ?"
                + " and not exists (select 1 from undated_chunk u where u.k = chunk.k)"
                + " fetch first "
                + STEP
                + " rows only")) {
      delete.setLong(1, ChunkKey.of(point, ChunkKey.MIN_HOUR, 0));
      delete.setLong(2, ChunkKey.of(point, ChunkKey.hourOf(before), 0));
      return delete.executeUpdate();
    }
  }

  /** Hours that never got a date are kept: nobody knows how old they are. */
  private static int datedLater(Connection connection, Dating dating, int point, long before)
      throws SQLException {
    int gone = 0;
    Undated undated = Undated.of(connection, dating, point);
    try (PreparedStatement delete = connection.prepareStatement("delete from chunk where k = ?")) {
      for (Undated.Chunk chunk : undated.touching(Long.MIN_VALUE, before)) {
        if (chunk.last() < before && gone < STEP) {
          delete.setLong(1, chunk.key());
          gone += delete.executeUpdate();
        }
      }
    }
    return gone;
  }
}
