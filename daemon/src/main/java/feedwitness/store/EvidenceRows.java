package feedwitness.store;

import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.quantity.Octets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The tables of records and states. */
final class EvidenceRows {
  private EvidenceRows() {}

  static long lastId(Connection connection) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement("select max(id) from evidence");
        ResultSet row = select.executeQuery()) {
      return row.next() ? row.getLong(1) : 0;
    }
  }

  /** Writes a record; again is harmless. */
  static void put(Connection connection, Evidence evidence) throws SQLException {
    try (PreparedStatement merge =
        connection.prepareStatement(
            "merge into evidence(id, kind, subject, boot, wall_millis, packed)"
                + " values (?, ?, ?, ?, ?, ?)")) {
      merge.setLong(1, evidence.id());
      merge.setString(2, evidence.kind());
      merge.setString(3, evidence.subject());
      merge.setInt(4, evidence.at().boot());
      // null: dated by its boot, if ever
      merge.setObject(5, evidence.at().dated() ? evidence.at().wallMillis() : null);
      merge.setBytes(6, EvidenceCodec.pack(evidence));
      merge.executeUpdate();
    }
  }

  static void putPicture(Connection connection, EvidenceCodec.Picture picture) throws SQLException {
    try (PreparedStatement merge =
        connection.prepareStatement("merge into evidence_picture(id, packed) values (?, ?)")) {
      merge.setLong(1, picture.id());
      merge.setBytes(2, EvidenceCodec.pack(picture));
      merge.executeUpdate();
    }
  }

  static void putState(Connection connection, String name, String text, long nowMillis)
      throws SQLException {
    try (PreparedStatement merge =
        connection.prepareStatement("merge into state(name, text, kept_millis) values (?, ?, ?)")) {
      merge.setString(1, name);
      merge.setString(2, text);
      merge.setLong(3, nowMillis);
      merge.executeUpdate();
    }
  }

  static Optional<String> state(Connection connection, String name) throws SQLException {
    try (PreparedStatement select =
        connection.prepareStatement("select text from state where name = ?")) {
      select.setString(1, name);
      try (ResultSet row = select.executeQuery()) {
        return row.next() ? Optional.of(row.getString(1)) : Optional.empty();
      }
    }
  }

  static Optional<byte[]> packed(Connection connection, long id) throws SQLException {
    return packed(connection, "evidence", id);
  }

  static Optional<byte[]> packedPicture(Connection connection, long id) throws SQLException {
    return packed(connection, "evidence_picture", id);
  }

  private static Optional<byte[]> packed(Connection connection, String table, long id)
      throws SQLException {
    try (PreparedStatement select =
        connection.prepareStatement("select packed from %s where id = ?".formatted(table))) {
      select.setLong(1, id);
      try (ResultSet row = select.executeQuery()) {
        return row.next() ? Optional.of(row.getBytes(1)) : Optional.empty();
      }
    }
  }

  /** A row as it lies in the table. */
  record Row(long id, Octets packed) {}

  /** Rows of a query but for its times, which undated rows may have from elsewhere. */
  static List<Row> rows(Connection connection, EvidenceQuery query, Page page) throws SQLException {
    boolean newestFirst = query.order() == EvidenceQuery.Order.NEWEST_FIRST;
    StringBuilder sql =
        new StringBuilder("select id, packed from evidence where id > ? and id < ?");
    if (!query.kinds().isEmpty()) {
      sql.append(" and kind in (")
          .append(query.kinds().stream().map(kind -> "?").collect(Collectors.joining(", ")))
          .append(')');
    }
    if (query.subject().isPresent()) {
      sql.append(" and subject = ?");
    }
    query.from().ifPresent(from -> sql.append(" and (wall_millis >= ? or wall_millis is null)"));
    query.to().ifPresent(to -> sql.append(" and (wall_millis < ? or wall_millis is null)"));
    sql.append(newestFirst ? " order by id desc" : " order by id").append(" limit ?");
    try (PreparedStatement select = connection.prepareStatement(sql.toString())) {
      int at = 1;
      select.setLong(at++, page.afterId());
      select.setLong(at++, page.beforeId());
      for (String kind : query.kinds()) {
        select.setString(at++, kind);
      }
      if (query.subject().isPresent()) {
        select.setString(at++, query.subject().get());
      }
      if (query.from().isPresent()) {
        select.setLong(at++, query.from().get().toEpochMilli());
      }
      if (query.to().isPresent()) {
        select.setLong(at++, query.to().get().toEpochMilli());
      }
      select.setInt(at, page.limit());
      return read(select);
    }
  }

  /** A page of a query. */
  record Page(long afterId, long beforeId, int limit) {}

  private static List<Row> read(PreparedStatement select) throws SQLException {
    List<Row> rows = new ArrayList<>();
    try (ResultSet row = select.executeQuery()) {
      while (row.next()) {
        rows.add(new Row(row.getLong(1), Octets.of(row.getBytes(2))));
      }
    }
    return rows;
  }
}
