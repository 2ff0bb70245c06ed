package feedwitness.store;

import feedwitness.ledger.History;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.LongConsumer;
import org.jspecify.annotations.Nullable;

/** Reads the file and what is pending as one history. For any thread. */
final class HistoryReader implements History {
  private final H2File file;
  private final Catalogue catalogue;
  private final Dating dating;
  private final Pending pending;
  private final Consumer<String> report;
  private final ConcurrentMap<PointName, Last> lasts = new ConcurrentHashMap<>();

  HistoryReader(
      H2File file, Catalogue catalogue, Dating dating, Pending pending, Consumer<String> report) {
    this.dating = dating;
    this.file = file;
    this.catalogue = catalogue;
    this.pending = pending;
    this.report = report;
  }

  /** Learns what came last before this start; call once, after all is sealed. */
  void load(Connection connection) throws SQLException {
    try (PreparedStatement select =
            connection.prepareStatement(
                "select name, last_chunk, id from point where last_chunk is not null");
        ResultSet row = select.executeQuery()) {
      while (row.next()) {
        PointName point = new PointName(row.getString(1));
        long key = row.getLong(2);
        try (ReadSession session = session(point)) {
          session.chunk(key, Long.MIN_VALUE, Long.MAX_VALUE, this::noteLatest);
          OptionalLong earlier =
              latestReading(point).isPresent()
                  ? OptionalLong.empty()
                  : Imports.lastOwnChunkWithReading(connection, catalogue, row.getInt(3));
          if (earlier.isPresent()) {
            session.chunk(
                earlier.getAsLong(), Long.MIN_VALUE, Long.MAX_VALUE, this::noteLatestReading);
          }
        }
      }
    }
  }

  /**
   * Takes note of a sample that was just handed over for keeping. One thread only: a plain
   * comparison costs a tenth of an atomic one.
   */
  void noteLatest(Measurement measurement) {
    if (Imports.isImported(measurement.sample())) {
      return;
    }
    Last last = lasts.computeIfAbsent(measurement.point(), unused -> new Last());
    Last.note(last.sample, measurement);
    noteReading(last, measurement);
  }

  private void noteLatestReading(Measurement measurement) {
    if (!Imports.isImported(measurement.sample())) {
      noteReading(lasts.computeIfAbsent(measurement.point(), unused -> new Last()), measurement);
    }
  }

  private static void noteReading(Last last, Measurement measurement) {
    if (!Double.isNaN(measurement.conductivityMilliSiemensPerCm())) {
      Last.note(last.reading, measurement);
    }
  }

  /** What came last of a point: any sample, and one with a reading. */
  private record Last(
      AtomicReference<@Nullable Measurement> sample,
      AtomicReference<@Nullable Measurement> reading) {
    Last() {
      this(new AtomicReference<>(), new AtomicReference<>());
    }

    static void note(AtomicReference<@Nullable Measurement> last, Measurement measurement) {
      Measurement before = last.getPlain();
      if (before == null || measurement.stamp().compareTo(before.stamp()) >= 0) {
        last.setRelease(measurement);
      }
    }
  }

  @Override
  public Optional<Measurement> latest(PointName point) {
    return Optional.ofNullable(lasts.get(point))
        .flatMap(last -> Optional.ofNullable(last.sample.getAcquire()))
        .map(dating::apply);
  }

  @Override
  public Optional<Measurement> latestReading(PointName point) {
    return Optional.ofNullable(lasts.get(point))
        .flatMap(last -> Optional.ofNullable(last.reading.getAcquire()))
        .map(dating::apply);
  }

  @Override
  public List<PointName> recorded() {
    return catalogue.points();
  }

  H2File file() {
    return file;
  }

  @Override
  public Optional<Instant> newest() {
    return lasts.values().stream()
        .flatMap(last -> Optional.ofNullable(last.sample.getAcquire()).stream())
        .map(dating::apply)
        .map(Measurement::stamp)
        .max(java.util.Comparator.naturalOrder())
        .map(stamp -> stamp.wall());
  }

  @Override
  public Course course(PointName point, Instant from, Instant to, int maxBuckets) {
    if (maxBuckets < 1) {
      throw new IllegalArgumentException("a course of %d buckets".formatted(maxBuckets));
    }
    long first = millis(from);
    long end = millis(to);
    if (first >= end) {
      return new Course(Duration.ZERO, List.of());
    }
    try (ReadSession session = session(point)) {
      return new CourseReader(session, first, end, maxBuckets).read();
    } catch (SQLException e) {
      throw unreadable(point, e);
    }
  }

  @Override
  public void scan(PointName point, Instant from, Instant to, Consumer<Measurement> each) {
    long first = millis(from);
    long end = millis(to);
    if (first >= end) {
      return;
    }
    try (ReadSession session = session(point)) {
      List<Measurement> tail = session.tail(first, end);
      int next = 0;
      if (session.number().isPresent()) {
        int number = session.number().getAsInt();
        long low = ChunkKey.of(number, ChunkKey.hourOf(first), 0);
        long high = ChunkKey.of(number, ChunkKey.hourOf(end - 1), ChunkKey.MAX_ORDINAL);
        for (ReadSession.Place place : session.placesInOrder(low, high, first, end)) {
          // an hour written whole may be sealed before one that is still hot
          while (next < tail.size() && place.after(tail.get(next).stamp())) {
            each.accept(tail.get(next++));
          }
          session.chunk(place.key(), first, end, each);
        }
      }
      tail.subList(next, tail.size()).forEach(each);
    } catch (SQLException e) {
      throw unreadable(point, e);
    }
  }

  @Override
  public void retired(PointName point, Instant from, Instant to, LongConsumer minute) {
    long first = millis(from);
    long end = millis(to);
    if (first >= end) {
      return;
    }
    try (ReadSession session = session(point)) {
      session.retired(first, end, minute);
    } catch (SQLException e) {
      throw unreadable(point, e);
    }
  }

  private ReadSession session(PointName point) throws SQLException {
    if (pending.isClosed()) {
      throw new IllegalStateException("the store is closed, history cannot be read");
    }
    return new ReadSession(file, catalogue, dating, pending, point, report);
  }

  private IllegalStateException unreadable(PointName point, SQLException e) {
    return new IllegalStateException(
        "history of %s cannot be read from %s: %s".formatted(point, file.path(), e.getMessage()),
        e);
  }

  /** As far as milliseconds of 64 bits reach: a range without an end is no error. */
  private static long millis(Instant instant) {
    try {
      return instant.toEpochMilli();
    } catch (ArithmeticException e) {
      return instant.getEpochSecond() < 0 ? Long.MIN_VALUE : Long.MAX_VALUE;
    }
  }
}
