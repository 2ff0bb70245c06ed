package feedwitness.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;

/**
 * Writes runs as chunks with their roll-ups; {@link #finish} when all are written. Leaves the
 * commit to the caller.
 */
final class ChunkWriter {
  private final Connection connection;
  private final Set<Long> days = new LinkedHashSet<>();

  ChunkWriter(Connection connection) {
    this.connection = connection;
  }

  void write(PackedChunk chunk) throws SQLException {
    OptionalLong free = freeKey(chunk.facts());
    if (free.isEmpty()) {
      return;
    }
    insertChunk(free.getAsLong(), chunk);
    insertRollups(free.getAsLong(), chunk.facts(), chunk.rollups());
    if (!chunk.imported()) {
      noteLast(free.getAsLong(), chunk.facts());
    }
  }

  /** Writes what is left of a chunk whose samples are not there any more. */
  void writeRollups(ChunkFacts facts, List<Rollup> minutes) throws SQLException {
    OptionalLong free = freeKey(facts);
    if (free.isPresent()) {
      insertRollups(free.getAsLong(), facts, PackedChunk.Packed.of(facts, minutes));
    }
  }

  private void insertRollups(long key, ChunkFacts facts, PackedChunk.Packed rollups)
      throws SQLException {
    insertHour(key, facts, rollups.whole().toArray());
    insertPacked("rollup_quarter", key, rollups.quarters().toArray());
    insertPacked("rollup_minute", key, rollups.minutes().toArray());
    if (facts.key().dated()) {
      days.add(ChunkKey.dayOf(key));
    } else {
      noteUndated(key, facts);
    }
  }

  /** Writes the days anew of which hours were written. */
  void finish() throws SQLException {
    for (long day : days) {
      DayRows.renew(connection, day);
    }
    days.clear();
  }

  /**
   * The next ordinal of the hour; empty if this very run is there already, because the commit that
   * seemed to fail had succeeded after all.
   */
  private OptionalLong freeKey(ChunkFacts facts) throws SQLException {
    RunKey own = facts.key();
    long free = ChunkKey.of(own.point(), own.hour(), 0);
    try (PreparedStatement select =
        connection.prepareStatement(
            "select k, boot, first_seq, samples from rollup_hour where k between ? and ?"
                + " order by k")) {
      select.setLong(1, free);
      select.setLong(2, ChunkKey.of(own.point(), own.hour(), ChunkKey.MAX_ORDINAL));
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) {
          if (row.getInt(2) == own.boot()
              && row.getLong(3) == facts.firstSequence()
              && row.getInt(4) == facts.samples()) {
            return OptionalLong.empty();
          }
          free = row.getLong(1) + 1;
        }
      }
    }
    return OptionalLong.of(free);
  }

  private void insertChunk(long key, PackedChunk chunk) throws SQLException {
    ChunkFacts facts = chunk.facts();
    Rollup hour = chunk.rollups().hour();
    try (PreparedStatement insert =
        connection.prepareStatement(
            "insert into chunk(k, boot, first_seq, last_seq, first_millis, last_millis, samples,"
                + " readings, min25, max25, bases, packed) values (?,?,?,?,?,?,?,?,?,?,?,?)")) {
      insert.setLong(1, key);
      insert.setInt(2, facts.key().boot());
      insert.setLong(3, facts.firstSequence());
      insert.setLong(4, facts.lastSequence());
      insert.setLong(5, chunk.firstMillis());
      insert.setLong(6, chunk.lastMillis());
      insert.setInt(7, facts.samples());
      insert.setInt(8, hour.readings());
      setNumber(insert, 9, hour.min());
      setNumber(insert, 10, hour.max());
      insert.setString(11, chunk.bases());
      insert.setBytes(12, chunk.samples().toArray());
      insert.executeUpdate();
    }
  }

  private static void setNumber(PreparedStatement statement, int index, double value)
      throws SQLException {
    if (Double.isNaN(value)) {
      statement.setNull(index, Types.DOUBLE);
    } else {
      statement.setDouble(index, value);
    }
  }

  private void insertHour(long key, ChunkFacts facts, byte[] whole) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "insert into rollup_hour(k, boot, first_seq, samples, whole) values (?,?,?,?,?)")) {
      insert.setLong(1, key);
      insert.setInt(2, facts.key().boot());
      insert.setLong(3, facts.firstSequence());
      insert.setInt(4, facts.samples());
      insert.setBytes(5, whole);
      insert.executeUpdate();
    }
  }

  private void insertPacked(String table, long key, byte[] packed) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement("insert into " + table + "(k, packed) values (?,?)")) {
      insert.setLong(1, key);
      insert.setBytes(2, packed);
      insert.executeUpdate();
    }
  }

  /** Where its samples lie on the clock that never jumps, for when it gets a date. */
  private void noteUndated(long key, ChunkFacts facts) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "insert into undated_chunk(k, boot, first_mono, last_mono, first_wall)"
                + " values (?,?,?,?,?)")) {
      insert.setLong(1, key);
      insert.setInt(2, facts.key().boot());
      insert.setLong(3, facts.firstMono());
      insert.setLong(4, facts.lastMono());
      insert.setLong(5, facts.firstWall());
      insert.executeUpdate();
    }
  }

  /** Complete hours may be written before an earlier one that is still hot. */
  private void noteLast(long key, ChunkFacts facts) throws SQLException {
    try (PreparedStatement update =
        connection.prepareStatement(
            "update point p set last_chunk = ? where id = ? and not exists (select 1"
                + " from rollup_hour r where r.k = p.last_chunk"
                + " and (r.boot > ? or (r.boot = ? and r.first_seq > ?)))")) {
      update.setLong(1, key);
      update.setInt(2, facts.key().point());
      update.setInt(3, facts.key().boot());
      update.setInt(4, facts.key().boot());
      update.setLong(5, facts.firstSequence());
      update.executeUpdate();
    }
  }
}
