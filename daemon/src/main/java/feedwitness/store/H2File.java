package feedwitness.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.ConcurrentLinkedDeque;
import org.h2.engine.SessionLocal;
import org.h2.jdbc.JdbcConnection;
import org.h2.mvstore.MVStore;
import org.h2.mvstore.MVStoreException;
import org.tinylog.Logger;

/** The database file: one connection that writes, a few that read a snapshot each. */
final class H2File {
  static final String NAME = "history";
  static final String SUFFIX = ".mv.db";
  static final String LOCK = NAME + ".lock";
  private static final int IDLE_READERS = 4;

  /** What the file is reached by unless a test looks on. */
  private static final String DISK = "";

  /** How much of the file is to be wanted octets. */
  private static final int TIDY_PERCENT = 80;

  private static final int TIDY_OCTETS = 1_000_000;

  /** H2's own; shorter ones are known to corrupt. */
  private static final int USUAL_RETENTION_MILLIS = 45_000;

  /**
   * What all connections must share. Pages of 8 kB: two thirds of what each sync writes with 16,
   * and little more room taken. Nothing is compacted while closing: that writes all anew and leaves
   * the file larger than before.
   */
  private static final String SHARED = ";DB_CLOSE_ON_EXIT=FALSE;PAGE_SIZE=8192;MAX_COMPACT_TIME=0";

  private final Path directory;
  private final String name;
  private final String scheme;
  private final int retentionMillis;
  private final String access;
  private final ConcurrentLinkedDeque<Connection> idle = new ConcurrentLinkedDeque<>();

  H2File(Path directory) {
    this(directory, NAME, DISK, USUAL_RETENTION_MILLIS, "");
  }

  /** A file that is there, to be looked at without changing an octet of it. */
  static H2File readOnly(Path directory) {
    return new H2File(
        directory, NAME, DISK, USUAL_RETENTION_MILLIS, ";ACCESS_MODE_DATA=r;IFEXISTS=TRUE");
  }

  /**
   * @param scheme of a file access registered with H2 that lies below ours and counts writes or
   *     plays a power cut
   * @param retentionMillis how long what nothing needs any more is kept; shorter only where time is
   *     played faster than it is
   */
  H2File(Path directory, String scheme, int retentionMillis) {
    this(directory, NAME, scheme, retentionMillis, "");
  }

  private H2File(Path directory, String name, String scheme, int retentionMillis, String access) {
    this.access = access;
    OrderedDisk.register();
    this.name = name;
    this.directory = directory.toAbsolutePath().normalize();
    this.scheme = scheme;
    this.retentionMillis = retentionMillis;
  }

  Path path() {
    return directory.resolve(name + SUFFIX);
  }

  /** A file of another name beside this one. */
  H2File beside(String otherName) {
    return new H2File(directory, otherName, DISK, retentionMillis, "");
  }

  Path directory() {
    return directory;
  }

  /**
   * Opens the file. WRITE_DELAY so long that nothing is written between forced syncs: H2 otherwise
   * flushes twice a second, which wears a flash card twenty times as fast. DB_CLOSE_ON_EXIT off:
   * the service closes in its own order. Room is not used again until {@link #tidy}.
   */
  Connection openWriter() throws SQLException {
    Connection connection =
        connect(";WRITE_DELAY=60000;CACHE_SIZE=8192;TRACE_LEVEL_FILE=0;DEFAULT_LOCK_TIMEOUT=10000");
    connection.setAutoCommit(false);
    // 25 days: until tidied up
    store(connection).setRetentionTime(Integer.MAX_VALUE);
    return connection;
  }

  private Connection connect(String more) throws SQLException {
    String url =
        "jdbc:h2:" + OrderedDisk.SCHEME + scheme + directory.resolve(name) + SHARED + access + more;
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
   * Gives room in the file free that nothing needs any more, and moves what is still wanted out of
   * stretches that hold little of it. Each sealing leaves a stretch of 100 kB of which one page in
   * ten stays wanted for years; without moving them the file grows to six octets a reading instead
   * of less than two. Costs at most {@link #TIDY_OCTETS} of writing.
   *
   * <p>Room is given free here only, when the header on disk points at what was written last: after
   * a power cut H2 finds its way from the header along all that was written since, and would stop,
   * at a state from before the last forced sync, where it finds room used again.
   */
  void tidy(Connection connection) throws SQLException {
    free(connection, TIDY_OCTETS);
  }

  /** The same without moving anything. */
  void free(Connection connection) throws SQLException {
    free(connection, 0);
  }

  private void free(Connection connection, int moveOctets) throws SQLException {
    MVStore store = store(connection);
    try {
      writeHeader(connection);
      store.setRetentionTime(retentionMillis);
      if (moveOctets > 0) {
        store.compact(TIDY_PERCENT, moveOctets);
      }
      touch(connection);
    } catch (MVStoreException e) {
      throw new SQLException("tidying up failed: " + e.getMessage(), e);
    } finally {
      store.setRetentionTime(Integer.MAX_VALUE);
    }
  }

  private static void writeHeader(Connection connection) throws SQLException {
    // the mark of a file closed in order; H2 takes it away with a new header
    store(connection).getStoreHeader().put("clean", 1);
    touch(connection);
  }

  /** Closes the database in order. H2 gives all room free then, so the header must be new. */
  static void shutDown(Connection connection) throws SQLException {
    writeHeader(connection);
    try (Statement statement = connection.createStatement()) {
      statement.execute("shutdown");
    }
  }

  /** Closes a database without writing an octet: what it does not know must not be written over. */
  static void abandon(Connection connection) {
    try (Statement statement = connection.createStatement()) {
      statement.execute("shutdown immediately");
    } catch (SQLException e) {
      Logger.debug(e, "abandoning a database");
    }
    closeQuietly(connection);
  }

  /** Something to write, so that forcing does write. */
  private static void touch(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("update schema_version set version = version");
    }
    connection.commit();
    force(connection);
  }

  private static MVStore store(Connection connection) throws SQLException {
    if (connection.unwrap(JdbcConnection.class).getSession() instanceof SessionLocal session) {
      return session.getDatabase().getStore().getMvStore();
    }
    throw new SQLException("the database does not run in this process");
  }

  /** Forces everything committed onto the disk. */
  static void force(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("checkpoint sync");
    }
  }
}
