package feedwitness.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.ConcurrentLinkedDeque;
import org.h2.engine.SessionLocal;
import org.h2.jdbc.JdbcConnection;
import org.h2.mvstore.MVStoreException;
import org.tinylog.Logger;

/** The database file: one connection that writes, a few that read a snapshot each. */
final class H2File {
  static final String NAME = "history";
  static final String SUFFIX = ".mv.db";
  static final String LOCK = NAME + ".lock";
  private static final int IDLE_READERS = 4;

  /** Scheme of H2's own access to files. */
  static final String DISK = "file:";

  /** How much of the file is to be wanted octets. */
  private static final int TIDY_PERCENT = 80;

  private static final int TIDY_OCTETS = 1_000_000;

  private final Path directory;
  private final String scheme;
  private final String shared;
  private final ConcurrentLinkedDeque<Connection> idle = new ConcurrentLinkedDeque<>();

  H2File(Path directory) {
    this(directory, DISK, "");
  }

  /** A file that is there, to be looked at without changing an octet of it. */
  static H2File readOnly(Path directory) {
    return new H2File(directory, DISK, ";ACCESS_MODE_DATA=r;IFEXISTS=TRUE");
  }

  /**
   * @param scheme of the file access registered with H2, {@link #DISK} or one that counts writes or
   *     plays a power cut
   * @param more settings of H2 that all connections must share, each after a semicolon
   */
  H2File(Path directory, String scheme, String more) {
    this.directory = directory.toAbsolutePath().normalize();
    this.scheme = scheme;
    // pages of 8 kB: half of what each sync writes with 16, and little more room taken. Nothing is
    // compacted while closing: that writes all anew and leaves the file larger than before
    this.shared = ";DB_CLOSE_ON_EXIT=FALSE;PAGE_SIZE=8192;MAX_COMPACT_TIME=0" + more;
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
    String url = "jdbc:h2:" + scheme + directory.resolve(NAME) + shared + more;
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

  /**
   * Moves what is still wanted out of stretches of the file that hold little of it. Each sealing
   * leaves a stretch of 100 kB of which one page in ten stays wanted for years; without this the
   * file grows to six octets a reading instead of less than two. Costs at most {@link #TIDY_OCTETS}
   * of writing.
   */
  static void tidy(Connection connection) throws SQLException {
    if (connection.unwrap(JdbcConnection.class).getSession() instanceof SessionLocal session) {
      try {
        session.getDatabase().getStore().getMvStore().compact(TIDY_PERCENT, TIDY_OCTETS);
      } catch (MVStoreException e) {
        throw new SQLException("tidying up failed: " + e.getMessage(), e);
      }
    }
  }

  /** Forces everything committed onto the disk. */
  static void force(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("checkpoint sync");
    }
  }
}
