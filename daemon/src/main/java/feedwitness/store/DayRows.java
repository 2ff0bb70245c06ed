package feedwitness.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.OptionalLong;

/**
 * The hourly roll-ups of a day of a point in one row: a year is 365 rows near each other instead of
 * 8 760, so that history may grow without a year's course getting slower. Made of {@code
 * rollup_hour} in the transaction that adds an hour there, so they always agree; never the only
 * place of anything. Hours that came without a date are left out, see {@link Undated}.
 */
final class DayRows {
  private static final int DAYS_A_COMMIT = 500;

  /** A row that says: look at the hours, one of them cannot be read. */
  private static final byte[] ASK_THE_HOURS = new byte[0];

  private DayRows() {}

  /** Makes the row of a day anew; the caller commits. {@code day}: see {@link ChunkKey#dayOf}. */
  static void renew(Connection connection, long day) throws SQLException {
    Stretches hours = new Stretches(Level.HOUR.millis());
    boolean readable = true;
    boolean any = false;
    try (PreparedStatement select =
        connection.prepareStatement(
            "select whole from rollup_hour h where k between ? and ?"
                + " and not exists (select 1 from undated_chunk u where u.k = h.k) order by k")) {
      select.setLong(1, day);
      select.setLong(2, ChunkKey.endOfDay(day));
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) {
          any = true;
          readable &= add(hours, row.getBytes(1));
        }
      }
    }
    if (any) {
      put(connection, day, readable ? DayCodec.pack(hours.rollups()) : ASK_THE_HOURS);
    }
  }

  private static boolean add(Stretches hours, byte[] packed) {
    try {
      RollupCodec.unpack(packed).forEach(hours::add);
      return true;
    } catch (DamagedException e) {
      // told to whoever reads that hour
      return false;
    }
  }

  private static void put(Connection connection, long day, byte[] packed) throws SQLException {
    try (PreparedStatement merge =
        connection.prepareStatement("merge into rollup_day(k, packed) values (?, ?)")) {
      merge.setLong(1, day);
      merge.setBytes(2, packed);
      merge.executeUpdate();
    }
  }

  /** Makes all rows, for a file that has hours only. May be cut short and run again. */
  static void fill(Connection connection) throws SQLException {
    int days = 0;
    OptionalLong hour = hourFrom(connection, Long.MIN_VALUE);
    while (hour.isPresent()) {
      long day = ChunkKey.dayOf(hour.getAsLong());
      renew(connection, day);
      if (++days % DAYS_A_COMMIT == 0) {
        connection.commit();
      }
      hour = hourFrom(connection, ChunkKey.endOfDay(day) + 1);
    }
    connection.commit();
  }

  private static OptionalLong hourFrom(Connection connection, long low) throws SQLException {
    try (PreparedStatement select =
        connection.prepareStatement(
            "select k from rollup_hour where k >= ? order by k fetch first row only")) {
      select.setLong(1, low);
      try (ResultSet row = select.executeQuery()) {
        return row.next() ? OptionalLong.of(row.getLong(1)) : OptionalLong.empty();
      }
    }
  }
}
