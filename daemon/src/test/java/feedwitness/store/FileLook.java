package feedwitness.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/** Looks into, or meddles with, a history file whose ledger is closed. */
final class FileLook implements AutoCloseable {
  private final Connection connection;

  FileLook(Path directory) throws SQLException {
    OrderedDisk.register();
    connection =
        DriverManager.getConnection(
            "jdbc:h2:" + OrderedDisk.SCHEME + directory.toAbsolutePath().resolve(H2File.NAME),
            "sa",
            "");
  }

  long count(String table) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("select count(*) from " + table)) {
      row.next();
      return row.getLong(1);
    }
  }

  void run(String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  /** Flips a bit in the first packed row of a table. */
  void rot(String table, String key) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery(
                "select %s, packed from %s order by 1 limit 1".formatted(key, table))) {
      row.next();
      long id = row.getLong(1);
      byte[] packed = row.getBytes(2);
      packed[packed.length / 2] ^= 4;
      try (PreparedStatement update =
          connection.prepareStatement(
              "update %s set packed = ? where %s = ?".formatted(table, key))) {
        update.setBytes(1, packed);
        update.setLong(2, id);
        update.executeUpdate();
      }
    }
  }

  @Override
  public void close() throws SQLException {
    connection.close();
  }
}
