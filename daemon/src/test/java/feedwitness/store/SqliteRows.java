package feedwitness.store;

import feedwitness.measurement.Measurement;
import feedwitness.sample.Indication;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;

/**
 * What the benchmark measures ours beside: a row a reading in SQLite, without a second index, and
 * its hourly roll-up. Write-ahead log, as SQLite itself recommends for this.
 */
final class SqliteRows implements AutoCloseable {
  private final Path file;
  private final Connection connection;

  /**
   * @param synchronous {@code full} to force every commit to disk, {@code normal} for speed
   */
  SqliteRows(Path directory, String synchronous) throws SQLException {
    file = directory.resolve("rows.sqlite");
    connection = DriverManager.getConnection("jdbc:sqlite:" + file);
    try (Statement statement = connection.createStatement()) {
      statement.execute("pragma journal_mode=wal");
      statement.execute("pragma synchronous=" + synchronous);
      statement.execute(
          "create table reading(point integer, t integer, ec real, celsius real, flags integer,"
              + " primary key(point, t)) without rowid");
      statement.execute(
          "create table hourly(point integer, hour integer, n integer, mean real, low real,"
              + " high real, primary key(point, hour)) without rowid");
    }
    connection.setAutoCommit(false);
  }

  /** One transaction. */
  void insert(List<Measurement> batch) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement("insert into reading values (?,?,?,?,?)")) {
      for (Measurement m : batch) {
        Indication indication = (Indication) m.sample();
        insert.setInt(1, BenchmarkData.POINTS.indexOf(m.point()));
        insert.setLong(2, m.stamp().wallMillis());
        insert.setDouble(3, indication.reading().conductivity());
        insert.setDouble(4, indication.reading().temperature());
        insert.setLong(5, m.flags().bits());
        insert.addBatch();
      }
      insert.executeBatch();
    }
    connection.commit();
  }

  void rollUp() throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(
          "insert into hourly select point, t / 3600000, count(*), avg(ec), min(ec), max(ec)"
              + " from reading group by 1, 2");
    }
    connection.commit();
  }

  /** Buckets from single rows; returns how many. */
  int course(int point, Instant from, Instant to, int points) throws SQLException {
    return buckets(
        "select t / ?, count(*), avg(ec), min(ec), max(ec), avg(celsius), max(flags)"
            + " from reading where point = ? and t >= ? and t < ? group by 1 order by 1",
        Math.max(1, (to.toEpochMilli() - from.toEpochMilli()) / points),
        point,
        from.toEpochMilli(),
        to.toEpochMilli());
  }

  /** Buckets of whole hours from the roll-up. */
  int courseOfHours(int point, Instant from, Instant to, int points) throws SQLException {
    long first = from.toEpochMilli() / 3_600_000;
    long end = to.toEpochMilli() / 3_600_000;
    return buckets(
        "select hour / ?, sum(n), sum(mean * n) / sum(n), min(low), max(high), 0, 0"
            + " from hourly where point = ? and hour >= ? and hour < ? group by 1 order by 1",
        Math.max(1, (end - first + points - 1) / points),
        point,
        first,
        end);
  }

  private int buckets(String sql, long width, int point, long from, long to) throws SQLException {
    int buckets = 0;
    double sum = 0;
    try (PreparedStatement select = connection.prepareStatement(sql)) {
      select.setLong(1, width);
      select.setInt(2, point);
      select.setLong(3, from);
      select.setLong(4, to);
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) {
          buckets++;
          for (int i = 2; i <= 7; i++) {
            sum += row.getDouble(i);
          }
        }
      }
    }
    if (sum == 0) {
      throw new AssertionError("nothing read");
    }
    return buckets;
  }

  /** The file alone, all of the log moved into it. */
  long octets() throws SQLException, IOException {
    connection.setAutoCommit(true);
    try (Statement statement = connection.createStatement()) {
      statement.execute("pragma wal_checkpoint(truncate)");
    }
    connection.setAutoCommit(false);
    return Files.size(file);
  }

  @Override
  public void close() throws SQLException {
    connection.close();
  }
}
