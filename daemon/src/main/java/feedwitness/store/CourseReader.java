package feedwitness.store;

import feedwitness.ledger.Bucket;
import feedwitness.ledger.History;
import feedwitness.measurement.Measurement;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/**
 * Makes one course. Takes single samples if they are few, else the coarsest roll-ups that fit the
 * bucket width; hours that the range cuts are read from their samples, so the edges are exact.
 */
final class CourseReader {
  private static final int PAGE = 256;
  private static final int FEW = 8;

  /** Of a day in which the service started every minute, all hours; for the rare case only. */
  private static final int MANY = 10_000;

  private final ReadSession session;
  private final long from;
  private final long to;
  private final int maxBuckets;
  private final boolean sealed;
  private final long low;
  private final long high;
  private final WholeDays wholeDays;

  /** Range in ms, {@code from} < {@code to}. */
  CourseReader(ReadSession session, long from, long to, int maxBuckets) {
    this.session = session;
    this.from = from;
    this.to = to;
    this.maxBuckets = maxBuckets;
    this.sealed = session.number().isPresent();
    int point = session.number().orElse(0);
    this.low = ChunkKey.of(point, ChunkKey.hourOf(from), 0);
    this.high = ChunkKey.of(point, ChunkKey.hourOf(to - 1), ChunkKey.MAX_ORDINAL);
    this.wholeDays = WholeDays.within(point, from, to);
  }

  History.Course read() throws SQLException {
    List<Measurement> tail = session.tail(from, to);
    if (fewSealed(tail.size())) {
      Optional<List<Measurement>> all = everySample(tail);
      if (all.isPresent() && all.get().size() <= maxBuckets) {
        return single(all.get());
      }
    }
    long width = width(tail);
    Stretches stretches = new Stretches(width);
    tail.forEach(stretches::add);
    if (sealed) {
      addSealed(stretches, level(width));
      for (Undated.Chunk chunk : session.undated().touching(from, to)) {
        addDatedLater(stretches, chunk, width);
      }
    }
    return new History.Course(Duration.ofMillis(width), stretches.buckets());
  }

  /** Empty if the samples of some hour are let go of. */
  private Optional<List<Measurement>> everySample(List<Measurement> tail) throws SQLException {
    List<Measurement> all = new ArrayList<>(tail);
    List<Long> keys = new ArrayList<>();
    forEachKey(keys::add);
    session.undated().touching(from, to).forEach(chunk -> keys.add(chunk.key()));
    boolean complete = true;
    for (long key : keys) {
      complete &= session.chunk(key, from, to, all::add);
    }
    return complete ? Optional.of(all) : Optional.empty();
  }

  /** Whether the hours wholly inside the range leave the range a chance to be few samples. */
  private boolean fewSealed(int unsealed) throws SQLException {
    long inside = unsealed;
    for (Undated.Chunk chunk : session.undated().touching(from, to)) {
      inside += chunk.within(from, to) ? chunk.samples() : 0;
    }
    if (sealed && inside <= maxBuckets && manyInWholeDays()) {
      return false;
    }
    long next = low;
    while (sealed && inside <= maxBuckets) {
      List<ReadSession.Row> page = session.counts(next, high, PAGE);
      for (ReadSession.Row row : page) {
        boolean counts =
            ChunkKey.within(ChunkKey.hour(row.key()), from, to)
                && !session.undated().has(row.key());
        inside += counts ? row.samples() : 0;
        next = row.key() + 1;
      }
      if (page.size() < PAGE) {
        break;
      }
    }
    return inside <= maxBuckets;
  }

  /** Mostly a row or a few tell, and those are read anyway. */
  private boolean manyInWholeDays() throws SQLException {
    long samples = 0;
    long next = wholeDays.firstKey();
    List<ReadSession.Row> page;
    do {
      page = session.days(next, wholeDays.lastKey(), FEW);
      for (ReadSession.Row row : page) {
        for (Rollup hour : hours(row).orElse(List.of())) {
          samples += hour.readings() + hour.missing();
        }
        next = row.key() + 1;
      }
    } while (page.size() == FEW && samples <= maxBuckets);
    return samples > maxBuckets;
  }

  private interface KeyAction {
    void run(long key) throws SQLException;
  }

  private void forEachKey(KeyAction action) throws SQLException {
    long next = low;
    while (sealed) {
      List<ReadSession.Row> page = session.counts(next, high, PAGE);
      for (ReadSession.Row row : page) {
        if (!session.undated().has(row.key())) {
          action.run(row.key());
        }
        next = row.key() + 1;
      }
      if (page.size() < PAGE) {
        return;
      }
    }
  }

  private static History.Course single(List<Measurement> measurements) {
    measurements.sort(
        Comparator.comparingLong((Measurement m) -> m.stamp().wallMillis())
            .thenComparing(Measurement::stamp));
    List<Bucket> buckets = new ArrayList<>(measurements.size());
    for (Measurement measurement : measurements) {
      Stretch stretch = new Stretch();
      stretch.add(measurement);
      buckets.add(stretch.bucket(measurement.stamp().wallMillis()));
    }
    return new History.Course(Duration.ZERO, buckets);
  }

  /** The range is first narrowed to where there is anything: "everything" need not be coarse. */
  private long width(List<Measurement> tail) throws SQLException {
    long first = Long.MAX_VALUE;
    long end = Long.MIN_VALUE;
    for (Measurement measurement : tail) {
      first = Math.min(first, measurement.stamp().wallMillis());
      end = Math.max(end, measurement.stamp().wallMillis() + 1);
    }
    OptionalLong lowest = sealed ? session.firstKey(low, high) : OptionalLong.empty();
    if (lowest.isPresent()) {
      long highest = session.lastKey(low, high).orElse(lowest.getAsLong());
      first = Math.min(first, ChunkKey.hour(lowest.getAsLong()) * ChunkKey.HOUR_MILLIS);
      end = Math.max(end, (ChunkKey.hour(highest) + 1) * ChunkKey.HOUR_MILLIS);
    }
    for (Undated.Chunk chunk : session.undated().touching(from, to)) {
      first = Math.min(first, chunk.first());
      end = Math.max(end, chunk.last() + 1);
    }
    return Widths.narrowest(Math.max(from, first), Math.min(to, end), maxBuckets);
  }

  /** The coarsest roll-ups of which a bucket is made; empty if only samples will do. */
  private static Optional<Level> level(long width) {
    Optional<Level> coarsest = Optional.empty();
    for (Level level : Level.values()) {
      if (width % level.millis() == 0) {
        coarsest = Optional.of(level);
      }
    }
    return coarsest;
  }

  private void addSealed(Stretches stretches, Optional<Level> level) throws SQLException {
    if (level.isEmpty()) {
      forEachKey(key -> addSamples(stretches, key));
      return;
    }
    if (level.get() == Level.HOUR) {
      addDays(stretches);
    } else {
      addRows(stretches, level.get(), low, high);
    }
  }

  private void addRows(Stretches stretches, Level level, long first, long last)
      throws SQLException {
    long next = first;
    List<ReadSession.Row> page;
    do {
      page = session.rollups(level, next, last, PAGE);
      for (ReadSession.Row row : page) {
        if (!session.undated().has(row.key())) {
          addRow(stretches, row);
        }
        next = row.key() + 1;
      }
    } while (page.size() == PAGE);
  }

  /** Whole days from their rows, the hours of the days that the range cuts from theirs. */
  private void addDays(Stretches stretches) throws SQLException {
    if (wholeDays.isEmpty()) {
      addRows(stretches, Level.HOUR, low, high);
      return;
    }
    addRows(stretches, Level.HOUR, low, wholeDays.firstKey() - 1);
    long next = wholeDays.firstKey();
    List<ReadSession.Row> page;
    do {
      page = session.days(next, wholeDays.lastKey(), PAGE);
      for (ReadSession.Row row : page) {
        Optional<List<Rollup>> hours = hours(row);
        if (hours.isPresent()) {
          hours.get().forEach(stretches::add);
        } else {
          addDatedHours(stretches, row.key());
        }
        next = row.key() + 1;
      }
    } while (page.size() == PAGE);
    for (long key : session.neverDated(wholeDays.firstKey(), wholeDays.lastKey())) {
      addRows(stretches, Level.HOUR, key, key);
    }
    addRows(stretches, Level.HOUR, wholeDays.lastKey() + 1, high);
  }

  /** Empty if the hours themselves are to be asked: the row was made of them, nothing is lost. */
  private Optional<List<Rollup>> hours(ReadSession.Row day) {
    if (day.packed().length() == 0) {
      return Optional.empty();
    }
    try {
      return Optional.of(DayCodec.unpack(day.packed().toArray()));
    } catch (DamagedException e) {
      session.damaged("roll-up, not the hours, of the day of " + ReadSession.hourOf(day.key()), e);
      return Optional.empty();
    }
  }

  private void addDatedHours(Stretches stretches, long day) throws SQLException {
    Set<Long> elsewhere = new HashSet<>(session.neverDated(day, ChunkKey.endOfDay(day)));
    for (ReadSession.Row row : session.rollups(Level.HOUR, day, ChunkKey.endOfDay(day), MANY)) {
      if (!session.undated().has(row.key()) && !elsewhere.contains(row.key())) {
        addRow(stretches, row);
      }
    }
  }

  private void addRow(Stretches stretches, ReadSession.Row row) throws SQLException {
    if (!ChunkKey.within(ChunkKey.hour(row.key()), from, to)) {
      addSamples(stretches, row.key());
      return;
    }
    try {
      RollupCodec.unpack(row.packed().toArray()).forEach(stretches::add);
    } catch (DamagedException e) {
      // the samples themselves may still be sound
      session.damaged("roll-up, not the samples, of " + ReadSession.hourOf(row.key()), e);
      session.chunk(row.key(), from, to, stretches::add);
    }
  }

  /** Or the minutes, where the samples are let go of. */
  private void addSamples(Stretches stretches, long key) throws SQLException {
    if (!session.chunk(key, from, to, stretches::add)) {
      addMinutes(stretches, key, 0);
    }
  }

  /** Its roll-ups are up to half a minute beside the true minutes: good enough for wide buckets. */
  private void addDatedLater(Stretches stretches, Undated.Chunk chunk, long width)
      throws SQLException {
    if (width >= Level.HOUR.millis() && chunk.within(from, to)) {
      addMinutes(stretches, chunk.key(), chunk.shift());
    } else if (!session.chunk(chunk.key(), from, to, stretches::add)) {
      addMinutes(stretches, chunk.key(), chunk.shift());
    }
  }

  private void addMinutes(Stretches stretches, long key, long shift) throws SQLException {
    for (ReadSession.Row row : session.rollups(Level.MINUTE, key, key, 1)) {
      try {
        for (Rollup minute : RollupCodec.unpack(row.packed().toArray())) {
          Rollup moved = minute.at(minute.startMillis() + shift);
          if (moved.startMillis() >= from && moved.startMillis() < to) {
            stretches.add(moved);
          }
        }
      } catch (DamagedException e) {
        session.damaged("minutes of " + ReadSession.hourOf(key), e);
      }
    }
  }
}
