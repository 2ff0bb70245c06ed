package feedwitness.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;

/**
 * The chunks of a point that were kept undated and have a date by now: their keys say when the
 * clock thought it was, not when it was, so they are found here instead.
 */
final class Undated {
  /**
   * One of them, with the true times of its first and last sample.
   *
   * @param shift true time less time as the clock had it, ms
   */
  record Chunk(
      long key, int boot, long firstSequence, int samples, long first, long last, long shift) {
    boolean touches(long from, long to) {
      return first < to && last >= from;
    }

    boolean within(long from, long to) {
      return first >= from && last < to;
    }
  }

  private final Map<Long, Chunk> byKey = new HashMap<>();

  /** Nothing, at no cost, for a service whose clock was always right. */
  static Undated of(Connection connection, Dating dating, int point) throws SQLException {
    Undated undated = new Undated();
    if (dating.isEmpty()) {
      return undated;
    }
    try (PreparedStatement select =
        connection.prepareStatement(
            "select u.k, u.boot, r.first_seq, r.samples, u.first_mono, u.last_mono, u.first_wall"
                + " from undated_chunk u join rollup_hour r on r.k = u.k"
                + " where u.k between ? and ?")) {
      select.setLong(1, ChunkKey.of(point, ChunkKey.MIN_HOUR, 0));
      select.setLong(2, ChunkKey.of(point, ChunkKey.MAX_HOUR, ChunkKey.MAX_ORDINAL));
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) {
          OptionalLong offset = dating.offset(row.getInt(2));
          if (offset.isPresent()) {
            undated.add(row, offset.getAsLong());
          }
        }
      }
    }
    return undated;
  }

  private void add(ResultSet row, long offset) throws SQLException {
    long first = row.getLong(5) + offset;
    byKey.put(
        row.getLong(1),
        new Chunk(
            row.getLong(1),
            row.getInt(2),
            row.getLong(3),
            row.getInt(4),
            first,
            row.getLong(6) + offset,
            first - row.getLong(7)));
  }

  boolean has(long key) {
    return byKey.containsKey(key);
  }

  Collection<Chunk> touching(long from, long to) {
    List<Chunk> touching = new ArrayList<>();
    for (Chunk chunk : byKey.values()) {
      if (chunk.touches(from, to)) {
        touching.add(chunk);
      }
    }
    return touching;
  }
}
