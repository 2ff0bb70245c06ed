package feedwitness.store;

import feedwitness.quantity.PointName;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** The rows that forced syncs append and sealing takes away again. */
final class HotRows {
  private HotRows() {}

  /** Writing the same row again changes nothing: a sync that failed half-way is repeated. */
  static void put(Connection connection, long number, byte[] packed) throws SQLException {
    try (PreparedStatement merge =
        connection.prepareStatement("merge into hot(n, packed) values (?, ?)")) {
      merge.setLong(1, number);
      merge.setBytes(2, packed);
      merge.executeUpdate();
    }
  }

  /** Packs runs into as few rows as H2's limit allows, mostly one. */
  static List<byte[]> pack(List<Run> runs) {
    byte[] packed = HotCodec.pack(runs);
    if (packed.length <= PackedChunk.MAX_PACKED) {
      return List.of(packed);
    }
    List<Run> left = new ArrayList<>();
    List<Run> right = new ArrayList<>();
    if (runs.size() > 1) {
      left.addAll(runs.subList(0, runs.size() / 2));
      right.addAll(runs.subList(runs.size() / 2, runs.size()));
    } else {
      List<Kept> samples = runs.get(0).samples();
      if (samples.size() < 2) {
        return List.of(packed);
      }
      left.add(new Run(runs.get(0).key(), samples.subList(0, samples.size() / 2)));
      right.add(new Run(runs.get(0).key(), samples.subList(samples.size() / 2, samples.size())));
    }
    List<byte[]> rows = new ArrayList<>(pack(left));
    rows.addAll(pack(right));
    return rows;
  }

  static Optional<Long> last(Connection connection) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement("select max(n) from hot");
        ResultSet row = select.executeQuery()) {
      if (!row.next()) {
        return Optional.empty();
      }
      long number = row.getLong(1);
      return row.wasNull() ? Optional.empty() : Optional.of(number);
    }
  }

  /** Takes a row that cannot be read, with its number. */
  interface Damage {
    void found(long number, byte[] packed, DamagedException what) throws SQLException;
  }

  /** Kept samples of one point, in the order they were kept. */
  static List<Kept> read(
      Connection connection, int point, PointName name, Predicate<RunKey> wanted, Damage damage)
      throws SQLException {
    List<Kept> samples = new ArrayList<>();
    try (PreparedStatement select =
            connection.prepareStatement("select n, packed from hot order by n");
        ResultSet row = select.executeQuery()) {
      while (row.next()) {
        byte[] packed = row.getBytes(2);
        try {
          Predicate<RunKey> ofPoint = key -> key.point() == point && wanted.test(key);
          for (Run run : HotCodec.unpack(packed, ofPoint, name)) {
            samples.addAll(run.samples());
          }
        } catch (DamagedException e) {
          damage.found(row.getLong(1), packed, e);
        }
      }
    }
    return samples;
  }

  /** Removes the rows up to a number. */
  static void remove(Connection connection, long upTo) throws SQLException {
    try (PreparedStatement delete = connection.prepareStatement("delete from hot where n <= ?")) {
      delete.setLong(1, upTo);
      delete.executeUpdate();
    }
  }
}
