package feedwitness.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/**
 * What a row of another table says, once more in an envelope, so that it can be found in a file
 * that no database opens any more.
 *
 * @param kind one of the constants
 * @param number of the point, the basis or the boot
 * @param text name, basis, start in ms, or offset in ms
 */
record Copy(int kind, int number, String text) {
  static final int POINT = 1;
  static final int BASIS = 2;
  static final int BOOT = 3;
  static final int DATING = 4;

  static Copy of(int kind, int number, String text) {
    return new Copy(kind, number, text);
  }

  /** Writes it, or writes it anew; the caller commits. */
  void put(Connection connection) throws SQLException {
    ByteSink sink = new ByteSink();
    sink.octet(kind);
    sink.unsigned(number);
    sink.text(text);
    try (PreparedStatement merge =
        connection.prepareStatement("merge into copy(k, packed) values (?, ?)")) {
      merge.setLong(1, ((long) kind << 32) | number);
      merge.setBytes(2, Envelope.pack(Envelope.Kind.COPY, sink.toArray()));
      merge.executeUpdate();
    }
  }

  void putIfMissing(Connection connection) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement("select 1 from copy where k = ?")) {
      select.setLong(1, ((long) kind << 32) | number);
      try (ResultSet row = select.executeQuery()) {
        if (row.next()) {
          return;
        }
      }
    }
    put(connection);
  }

  static Copy read(byte[] packed) throws DamagedException {
    ByteSource source = new ByteSource(Envelope.unpack(packed));
    return new Copy(source.octet(), source.count(Integer.MAX_VALUE), source.text());
  }
}
