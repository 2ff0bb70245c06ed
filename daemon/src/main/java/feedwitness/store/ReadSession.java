package feedwitness.store;

import feedwitness.measurement.Measurement;
import feedwitness.quantity.Octets;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.function.Consumer;
import java.util.function.LongConsumer;
import org.jspecify.annotations.Nullable;

/**
 * One look at one point: a snapshot of the file and what was pending at that very moment. Damaged
 * pieces are reported and left out.
 */
final class ReadSession implements AutoCloseable {
  private final H2File file;
  private final Catalogue catalogue;
  private final Dating dating;
  private final Consumer<String> report;
  private final PointName point;
  private final Connection connection;
  private final List<Measurement> pending;
  private final Undated undated;

  ReadSession(
      H2File file,
      Catalogue catalogue,
      Dating dating,
      Pending queue,
      PointName point,
      Consumer<String> report)
      throws SQLException {
    this.dating = dating;
    this.file = file;
    this.catalogue = catalogue;
    this.report = report;
    this.point = point;
    this.connection = file.borrowReader();
    try {
      this.pending = queue.snapshot(point, this::openSnapshot).stream().map(dating::apply).toList();
      this.undated =
          number().isPresent()
              ? Undated.of(connection, dating, number().getAsInt())
              : new Undated();
    } catch (SQLException | RuntimeException e) {
      file.giveBack(connection);
      throw e;
    }
  }

  /** H2 takes the snapshot of all tables with the first statement of the transaction. */
  private void openSnapshot() throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("select version from schema_version");
    }
  }

  /** Number of the point; empty while nothing of it is in the file. */
  OptionalInt number() {
    return catalogue.find(point).map(OptionalInt::of).orElseGet(OptionalInt::empty);
  }

  /**
   * What is not sealed yet, {@code from} ≤ wall time < {@code to} in ms, (boot, sequence) order.
   */
  List<Measurement> tail(long from, long to) throws SQLException {
    List<Measurement> tail = new ArrayList<>();
    OptionalInt number = number();
    if (number.isPresent()) {
      long first = ChunkKey.hourOf(from);
      long last = ChunkKey.hourOf(to - 1);
      List<Kept> hot =
          HotRows.read(
              connection,
              number.getAsInt(),
              point,
              key ->
                  (key.hour() >= first && key.hour() <= last)
                      || (!key.dated() && dating.offset(key.boot()).isPresent()),
              (row, packed, what) -> damaged("unsealed samples", what));
      for (Kept kept : hot) {
        restore(kept, from, to, tail::add);
      }
    }
    for (Measurement measurement : pending) {
      if (within(measurement.stamp(), from, to)) {
        tail.add(measurement);
      }
    }
    tail.sort(Comparator.comparing(Measurement::stamp));
    return tail;
  }

  /** A row of a table that is in the order of chunk keys. */
  record Row(long key, int samples, Octets packed) {}

  /** How many samples each chunk has, from key {@code low} to {@code high}, at most a page. */
  List<Row> counts(long low, long high, int page) throws SQLException {
    return rows("select k, samples, null from rollup_hour", low, high, page);
  }

  /** Packed roll-ups, likewise. */
  List<Row> rollups(Level level, long low, long high, int page) throws SQLException {
    String select =
        switch (level) {
          case MINUTE -> "select k, 0, packed from rollup_minute";
          case QUARTER -> "select k, 0, packed from rollup_quarter";
          case HOUR -> "select k, samples, whole from rollup_hour";
        };
    return rows(select, low, high, page);
  }

  /**
   * Hours of whole days, packed; nothing is packed in a row where the hours themselves are to be
   * read.
   */
  List<Row> days(long low, long high, int page) throws SQLException {
    return rows("select k, 0, packed from rollup_day", low, high, page);
  }

  private List<Row> rows(String select, long low, long high, int page) throws SQLException {
    List<Row> rows = new ArrayList<>();
    try (PreparedStatement statement =
        connection.prepareStatement(select + " where k between ? and ? order by k limit ?")) {
      statement.setLong(1, low);
      statement.setLong(2, high);
      statement.setInt(3, page);
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          byte @Nullable [] packed = row.getBytes(3);
          rows.add(
              new Row(
                  row.getLong(1), row.getInt(2), packed == null ? Octets.NONE : Octets.of(packed)));
        }
      }
    }
    return rows;
  }

  /** Chunks that were dated after they were kept; their keys do not say when they were. */
  Undated undated() {
    return undated;
  }

  /** Lowest key from {@code low} to {@code high} that says when its chunk was. */
  OptionalLong firstKey(long low, long high) throws SQLException {
    for (long next = low; ; ) {
      List<Long> some = keys("rollup_hour", " order by k", next, high);
      for (long key : some) {
        if (!undated.has(key)) {
          return OptionalLong.of(key);
        }
        next = key + 1;
      }
      if (some.isEmpty()) {
        return OptionalLong.empty();
      }
    }
  }

  /** Highest such key. */
  OptionalLong lastKey(long low, long high) throws SQLException {
    for (long next = high; ; ) {
      List<Long> some = keys("rollup_hour", " order by k desc", low, next);
      for (long key : some) {
        if (!undated.has(key)) {
          return OptionalLong.of(key);
        }
        next = key - 1;
      }
      if (some.isEmpty()) {
        return OptionalLong.empty();
      }
    }
  }

  /** Keys of chunks that never got a date, from {@code low} to {@code high}. */
  List<Long> neverDated(long low, long high) throws SQLException {
    List<Long> all = new ArrayList<>();
    for (long next = low; ; ) {
      List<Long> some = keys("undated_chunk", " order by k", next, high);
      for (long key : some) {
        if (!undated.has(key)) {
          all.add(key);
        }
        next = key + 1;
      }
      if (some.isEmpty()) {
        return all;
      }
    }
  }

  private List<Long> keys(String table, String order, long low, long high) throws SQLException {
    List<Long> keys = new ArrayList<>();
    try (PreparedStatement statement =
        connection.prepareStatement(
            "select k from " + table + " where k between ? and ?" + order + " limit 16")) {
      statement.setLong(1, low);
      statement.setLong(2, high);
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          keys.add(row.getLong(1));
        }
      }
    }
    return keys;
  }

  /** A chunk, and the first sample in it. */
  record Place(long key, int boot, long sequence) {
    boolean after(Stamp stamp) {
      return boot != stamp.boot() ? boot > stamp.boot() : sequence > stamp.sequence();
    }
  }

  /**
   * Chunks in (boot, sequence) order, with those that were dated later and touch {@code from} ≤
   * time < {@code to}: 24 octets an hour of history.
   */
  List<Place> placesInOrder(long low, long high, long from, long to) throws SQLException {
    List<Place> places = new ArrayList<>();
    try (PreparedStatement statement =
        connection.prepareStatement(
            "select k, boot, first_seq from rollup_hour where k between ? and ?")) {
      statement.setLong(1, low);
      statement.setLong(2, high);
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          if (!undated.has(row.getLong(1))) {
            places.add(new Place(row.getLong(1), row.getInt(2), row.getLong(3)));
          }
        }
      }
    }
    for (Undated.Chunk chunk : undated.touching(from, to)) {
      places.add(new Place(chunk.key(), chunk.boot(), chunk.firstSequence()));
    }
    places.sort(Comparator.comparingInt(Place::boot).thenComparingLong(Place::sequence));
    return places;
  }

  /**
   * The samples of a chunk with {@code from} ≤ wall time < {@code to}, in order.
   *
   * @return false if the samples were let go of and only roll-ups are left
   */
  boolean chunk(long key, long from, long to, Consumer<Measurement> each) throws SQLException {
    try (PreparedStatement statement =
        connection.prepareStatement("select packed from chunk where k = ?")) {
      statement.setLong(1, key);
      try (ResultSet row = statement.executeQuery()) {
        if (row.next()) {
          unpack(key, row.getBytes(1), from, to, each);
          return true;
        }
        return false;
      }
    }
  }

  /** Starts of minutes with readings whose samples were let go of, {@code from} ≤ start, ms. */
  void retired(long from, long to, LongConsumer minute) throws SQLException {
    if (number().isEmpty()) {
      return;
    }
    int number = number().getAsInt();
    try (PreparedStatement statement =
        connection.prepareStatement(
            "select k, packed from rollup_minute m where k between ? and ?"
                + " and not exists (select 1 from chunk c where c.k = m.k) order by k")) {
      statement.setLong(1, ChunkKey.of(number, ChunkKey.hourOf(from), 0));
      statement.setLong(2, ChunkKey.of(number, ChunkKey.hourOf(to - 1), ChunkKey.MAX_ORDINAL));
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          if (!undated.has(row.getLong(1))) {
            retired(row.getLong(1), row.getBytes(2), from, to, minute);
          }
        }
      }
    }
  }

  private void retired(long key, byte[] packed, long from, long to, LongConsumer minute) {
    try {
      for (Rollup rollup : RollupCodec.unpack(packed)) {
        long start = rollup.startMillis();
        if (rollup.readings() > 0 && start + Level.MINUTE.millis() > from && start < to) {
          minute.accept(start);
        }
      }
    } catch (DamagedException e) {
      damaged("minutes of " + hourOf(key), e);
    }
  }

  private void unpack(long key, byte[] packed, long from, long to, Consumer<Measurement> each) {
    Run run;
    try {
      ByteSource source = new ByteSource(Envelope.unpack(packed));
      run = RunCodec.read(source, RunCodec.readKey(source), point);
    } catch (DamagedException e) {
      damaged(hourOf(key), e);
      return;
    }
    for (Kept kept : run.samples()) {
      restore(kept, from, to, each);
    }
  }

  private void restore(Kept kept, long from, long to, Consumer<Measurement> each) {
    Measurement measurement;
    try {
      measurement = dating.apply(catalogue.measurement(kept));
    } catch (DamagedException e) {
      damaged("sample " + kept.sample().stamp().id(), e);
      return;
    }
    if (within(measurement.stamp(), from, to)) {
      each.accept(measurement);
    }
  }

  private static boolean within(Stamp stamp, long from, long to) {
    return stamp.wallMillis() >= from && stamp.wallMillis() < to;
  }

  static String hourOf(long key) {
    return "the hour from " + Instant.ofEpochMilli(ChunkKey.hour(key) * ChunkKey.HOUR_MILLIS);
  }

  void damaged(String what, DamagedException why) {
    report.accept(
        "history: %s of %s cannot be read (%s) and is left out; restore a backup to get it back"
            .formatted(what, point, why.getMessage()));
  }

  @Override
  public void close() {
    file.giveBack(connection);
  }
}
