package feedwitness.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.ConcurrentLinkedDeque;
import org.tinylog.Logger;

/** The database file: one connection that writes, a few that read a snapshot each. */
final class H2File {
  static final String NAME = "history";
  static final String SUFFIX = ".mv.db";
  static final String LOCK = NAME + ".lock";
  private static final int IDLE_READERS = 4;

  private final Path directory;
  private final ConcurrentLinkedDeque<Connection> idle = new ConcurrentLinkedDeque<>();

  private final String access;

  H2File(Path directory) {
    this(directory, "");
  }

  private H2File(Path directory, String access) {
    this.directory = directory.toAbsolutePath().normalize();
    this.access = access;
  }

  /** A file that is there, to be looked at without changing an octet of it. */
  static H2File readOnly(Path directory) {
    return new H2File(directory, ";ACCESS_MODE_DATA=r;IFEXISTS=TRUE");
  }

  Path path() {
    return directory.resolve(NAME + SUFFIX);
  }

  Path directory() {
    return directory;
  }

  /**
   * Opens the file. WRITE_DELAY so long that nothing is written between forced syncs: H2 otherwise
   * flushes twice a second, which wears a flash card twenty times as fast. DB_CLOSE_ON_EXIT off:
   * the service closes in its own order. RETENTION_TIME stays at its default: shorter ones are
   * known to corrupt.
   */
  Connection openWriter() throws SQLException {
    Connection connection =
        connect(";WRITE_DELAY=60000;CACHE_SIZE=4096;TRACE_LEVEL_FILE=0;DEFAULT_LOCK_TIMEOUT=10000");
    connection.setAutoCommit(false);
    return connection;
  }

  private Connection connect(String more) throws SQLException {
    String url =
        "jdbc:h2:file:" + directory.resolve(NAME) + ";DB_CLOSE_ON_EXIT=FALSE" + access + more;
    return DriverManager.getConnection(url, "sa", "");
  }

  /** A connection whose transaction sees one state of all tables. Give it back. */
  Connection borrowReader() throws SQLException {
    for (Connection c = idle.pollFirst(); c != null; c = idle.pollFirst()) {
      // closed under us if the database failed meanwhile
      if (!c.isClosed()) {
        return c;
      }
    }
    Connection connection = connect("");
    connection.setAutoCommit(false);
    try (Statement statement = connection.createStatement()) {
      statement.execute("set session characteristics as transaction isolation level snapshot");
    }
    return connection;
  }

  void giveBack(Connection reader) {
    try {
      reader.rollback();
      if (idle.size() < IDLE_READERS) {
        idle.addFirst(reader);
        return;
      }
    } catch (SQLException e) {
      Logger.debug(e, "reader not usable any more");
    }
    closeQuietly(reader);
  }

  void closeIdleReaders() {
    for (Connection c = idle.pollFirst(); c != null; c = idle.pollFirst()) {
      closeQuietly(c);
    }
  }

  static void closeQuietly(Connection connection) {
    try {
      connection.close();
    } catch (SQLException e) {
      Logger.debug(e, "closing a connection");
    }
  }

  /** Forces everything committed onto the disk. */
  static void force(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("checkpoint sync");
    }
  }
}
