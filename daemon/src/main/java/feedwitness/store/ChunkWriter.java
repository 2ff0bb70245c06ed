package feedwitness.store;

import feedwitness.measurement.Measurement;
import feedwitness.quantity.Stamp;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.List;
import java.util.OptionalLong;
import java.util.TreeSet;

/** Writes a run as a chunk with its roll-ups. Leaves the commit to the caller. */
final class ChunkWriter {
  /** H2 keeps at most 1 048 576 octets in a VARBINARY. */
  static final int MAX_PACKED = 900_000;

  private final Connection connection;
  private final Catalogue catalogue;

  ChunkWriter(Connection connection, Catalogue catalogue) {
    this.connection = connection;
    this.catalogue = catalogue;
  }

  void write(Run run) throws SQLException, DamagedException {
    ByteSink sink = new ByteSink();
    RunCodec.write(sink, run);
    byte[] packed = Envelope.pack(sink.toArray());
    int count = run.samples().size();
    if (packed.length > MAX_PACKED && count > 1) {
      write(new Run(run.key(), run.samples().subList(0, count / 2)));
      write(new Run(run.key(), run.samples().subList(count / 2, count)));
      return;
    }
    OptionalLong free = freeKey(run);
    if (free.isEmpty()) {
      return;
    }
    Stretches minutes = new Stretches(Level.MINUTE.millis());
    Stretches quarters = new Stretches(Level.QUARTER.millis());
    Stretch whole = new Stretch();
    for (Kept kept : run.samples()) {
      Measurement measurement = catalogue.measurement(kept);
      minutes.add(measurement);
      quarters.add(measurement);
      whole.add(measurement);
    }
    Rollup hour = whole.rollup(run.key().hour() * ChunkKey.HOUR_MILLIS);
    long key = free.getAsLong();
    insertChunk(key, run, hour, packed);
    insertHour(key, run, hour, quarters.rollups());
    insertMinutes(key, minutes.rollups());
    if (!run.key().dated()) {
      noteUndated(key, run);
    }
    if (!Imports.all(run.samples())) {
      noteLast(key, run);
    }
  }

  /**
   * The next ordinal of the hour; empty if this very run is there already, because the commit that
   * seemed to fail had succeeded after all.
   */
  private OptionalLong freeKey(Run run) throws SQLException {
    RunKey own = run.key();
    long sequence = run.samples().get(0).sample().stamp().sequence();
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
              && row.getLong(3) == sequence
              && row.getInt(4) == run.samples().size()) {
            return OptionalLong.empty();
          }
          free = row.getLong(1) + 1;
        }
      }
    }
    return OptionalLong.of(free);
  }

  private void insertChunk(long key, Run run, Rollup hour, byte[] packed) throws SQLException {
    List<Kept> samples = run.samples();
    TreeSet<Integer> bases = new TreeSet<>();
    long firstMillis = Long.MAX_VALUE;
    long lastMillis = Long.MIN_VALUE;
    for (Kept kept : samples) {
      bases.add(kept.basis());
      firstMillis = Math.min(firstMillis, kept.sample().stamp().wallMillis());
      lastMillis = Math.max(lastMillis, kept.sample().stamp().wallMillis());
    }
    try (PreparedStatement insert =
        connection.prepareStatement(
            "insert into chunk(k, boot, first_seq, last_seq, first_millis, last_millis, samples,"
                + " readings, min25, max25, bases, packed) values (?,?,?,?,?,?,?,?,?,?,?,?)")) {
      insert.setLong(1, key);
      insert.setInt(2, run.key().boot());
      insert.setLong(3, samples.get(0).sample().stamp().sequence());
      insert.setLong(4, samples.get(samples.size() - 1).sample().stamp().sequence());
      insert.setLong(5, firstMillis);
      insert.setLong(6, lastMillis);
      insert.setInt(7, samples.size());
      insert.setInt(8, hour.readings());
      setNumber(insert, 9, hour.min());
      setNumber(insert, 10, hour.max());
      insert.setString(11, String.join(",", bases.stream().map(String::valueOf).toList()));
      insert.setBytes(12, packed);
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

  private void insertHour(long key, Run run, Rollup hour, List<Rollup> quarters)
      throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "insert into rollup_hour(k, boot, first_seq, samples, whole, quarters)"
                + " values (?,?,?,?,?,?)")) {
      insert.setLong(1, key);
      insert.setInt(2, run.key().boot());
      insert.setLong(3, run.samples().get(0).sample().stamp().sequence());
      insert.setInt(4, run.samples().size());
      insert.setBytes(5, RollupCodec.pack(List.of(hour)));
      insert.setBytes(6, RollupCodec.pack(quarters));
      insert.executeUpdate();
    }
  }

  private void insertMinutes(long key, List<Rollup> minutes) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement("insert into rollup_minute(k, packed) values (?,?)")) {
      insert.setLong(1, key);
      insert.setBytes(2, RollupCodec.pack(minutes));
      insert.executeUpdate();
    }
  }

  /** Where its samples lie on the clock that never jumps, for when it gets a date. */
  private void noteUndated(long key, Run run) throws SQLException {
    Stamp first = run.samples().get(0).sample().stamp();
    Stamp last = run.samples().get(run.samples().size() - 1).sample().stamp();
    try (PreparedStatement insert =
        connection.prepareStatement(
            "insert into undated_chunk(k, boot, first_mono, last_mono, first_wall)"
                + " values (?,?,?,?,?)")) {
      insert.setLong(1, key);
      insert.setInt(2, run.key().boot());
      insert.setLong(3, Dating.monotonicMillis(first));
      insert.setLong(4, Dating.monotonicMillis(last));
      insert.setLong(5, first.wallMillis());
      insert.executeUpdate();
    }
  }

  /** Complete hours may be written before an earlier one that is still hot. */
  private void noteLast(long key, Run run) throws SQLException {
    try (PreparedStatement update =
        connection.prepareStatement(
            "update point p set last_chunk = ? where id = ? and not exists (select 1"
                + " from rollup_hour r where r.k = p.last_chunk"
                + " and (r.boot > ? or (r.boot = ? and r.first_seq > ?)))")) {
      update.setLong(1, key);
      update.setInt(2, run.key().point());
      update.setInt(3, run.key().boot());
      update.setInt(4, run.key().boot());
      update.setLong(5, run.samples().get(0).sample().stamp().sequence());
      update.executeUpdate();
    }
  }
}
