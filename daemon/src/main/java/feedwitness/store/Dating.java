package feedwitness.store;

import feedwitness.ledger.Evidence;
import feedwitness.measurement.Measurement;
import feedwitness.measurement.MeasurementChain;
import feedwitness.quantity.Stamp;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.sample.Sample;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What the undated samples of a boot are to be dated by: how far the wall clock is ahead of the
 * monotonic one, in ms, learnt from the first dated sample after them. Append-only: a boot is dated
 * once, and nothing that is kept is written anew; answers add the offset. For any thread.
 */
final class Dating {
  private static final long NANOS_PER_MILLI = 1_000_000;

  private final Map<Integer, Long> offsets = new ConcurrentHashMap<>();
  private final Map<Integer, Long> unsaved = new ConcurrentHashMap<>();
  // touched by the engine's thread only
  private int undatedBoot;

  static Dating load(Connection connection) throws SQLException {
    Dating dating = new Dating();
    try (PreparedStatement select =
            connection.prepareStatement("select boot, offset_millis from dating");
        ResultSet row = select.executeQuery()) {
      while (row.next()) {
        dating.offsets.put(row.getInt(1), row.getLong(2));
      }
    }
    return dating;
  }

  /** Learns from a new sample, in order of arrival. */
  void note(Stamp stamp) {
    if (!stamp.dated()) {
      undatedBoot = stamp.boot();
    } else if (undatedBoot == stamp.boot() && !offsets.containsKey(stamp.boot())) {
      long offset = stamp.wallMillis() - monotonicMillis(stamp);
      unsaved.put(stamp.boot(), offset);
      offsets.put(stamp.boot(), offset);
    }
  }

  /** Writes what was learnt since; the caller commits and then calls {@link #saved}. */
  List<Integer> save(Connection connection, long nowMillis) throws SQLException {
    List<Integer> boots = new ArrayList<>(unsaved.keySet());
    try (PreparedStatement insert =
        connection.prepareStatement(
            "merge into dating(boot, offset_millis, found_millis) values (?, ?, ?)")) {
      for (int boot : boots) {
        insert.setInt(1, boot);
        insert.setLong(2, offsets.getOrDefault(boot, 0L));
        insert.setLong(3, nowMillis);
        insert.executeUpdate();
        Copy.of(Copy.DATING, boot, Long.toString(offsets.getOrDefault(boot, 0L))).put(connection);
      }
    }
    return boots;
  }

  void saved(List<Integer> boots) {
    boots.forEach(unsaved::remove);
  }

  /** Takes an offset over from another file. */
  void adopt(int boot, long offset) {
    offsets.put(boot, offset);
    unsaved.put(boot, offset);
  }

  /** Offsets by boot. */
  Map<Integer, Long> all() {
    return Map.copyOf(offsets);
  }

  boolean isEmpty() {
    return offsets.isEmpty();
  }

  OptionalLong offset(int boot) {
    Long offset = offsets.get(boot);
    return offset == null ? OptionalLong.empty() : OptionalLong.of(offset);
  }

  static long monotonicMillis(Stamp stamp) {
    return Math.floorDiv(stamp.monotonicNanos(), NANOS_PER_MILLI);
  }

  private boolean dates(Stamp stamp) {
    return !stamp.dated() && offsets.containsKey(stamp.boot());
  }

  private Stamp dated(Stamp stamp) {
    long wall = monotonicMillis(stamp) + offsets.getOrDefault(stamp.boot(), 0L);
    return new Stamp(stamp.boot(), stamp.sequence(), stamp.monotonicNanos(), wall, true);
  }

  /** The record with its date, if it has one by now. */
  Evidence apply(Evidence evidence) {
    return dates(evidence.at())
        ? new Evidence(
            evidence.id(),
            dated(evidence.at()),
            evidence.kind(),
            evidence.subject(),
            evidence.author(),
            evidence.fields(),
            evidence.hasAttachment())
        : evidence;
  }

  /** The measurement with its date, if it has one by now; its flag still says it came undated. */
  Measurement apply(Measurement measurement) {
    if (!dates(measurement.stamp())) {
      return measurement;
    }
    Stamp stamp = dated(measurement.stamp());
    Sample sample = measurement.sample();
    Sample moved =
        sample instanceof Indication indication
            ? new Indication(indication.point(), stamp, indication.reading(), indication.origin())
            : new Missing(
                sample.point(), stamp, ((Missing) sample).cause(), ((Missing) sample).detail());
    return MeasurementChain.restore(moved, measurement.basis(), measurement.flags());
  }
}
