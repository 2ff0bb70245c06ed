package feedwitness.store;

import feedwitness.measurement.Basis;
import feedwitness.measurement.Measurement;
import feedwitness.measurement.MeasurementChain;
import feedwitness.quantity.PointName;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Numbers of points and bases in the file. Only the writer adds; anyone may look up. Additions are
 * committed at once, so that a number once given stands even if what follows is rolled back.
 */
final class Catalogue {
  private static final String POINT = "merge into point(id, name) values (?, ?)";
  private static final String BASIS = "merge into basis(id, text) values (?, ?)";

  private final Map<PointName, Integer> points = new ConcurrentHashMap<>();
  private final Map<Basis, Integer> bases = new ConcurrentHashMap<>();
  private final Map<Integer, PointName> pointsById = new ConcurrentHashMap<>();
  private final Map<Integer, Basis> basesById = new ConcurrentHashMap<>();

  /**
   * Reads what the file has.
   *
   * @throws IllegalArgumentException if a basis comes from a newer program or is damaged
   */
  static Catalogue load(Connection connection) throws SQLException {
    Catalogue catalogue = new Catalogue();
    try (PreparedStatement select = connection.prepareStatement("select id, name from point");
        ResultSet row = select.executeQuery()) {
      while (row.next()) {
        catalogue.put(row.getInt(1), new PointName(row.getString(2)));
      }
    }
    try (PreparedStatement select = connection.prepareStatement("select id, text from basis");
        ResultSet row = select.executeQuery()) {
      while (row.next()) {
        catalogue.put(row.getInt(1), Basis.parse(row.getString(2)));
      }
    }
    return catalogue;
  }

  private void put(int id, PointName name) {
    pointsById.put(id, name);
    points.put(name, id);
  }

  private void put(int id, Basis basis) {
    basesById.put(id, basis);
    bases.put(basis, id);
  }

  List<PointName> points() {
    return points.keySet().stream().sorted().toList();
  }

  Set<Integer> numbers() {
    return Set.copyOf(pointsById.keySet());
  }

  /** Number of a point, if it was ever kept. */
  Optional<Integer> find(PointName name) {
    return Optional.ofNullable(points.get(name));
  }

  /** Number of a basis, if it was ever kept. */
  Optional<Integer> find(Basis basis) {
    return Optional.ofNullable(bases.get(basis));
  }

  /** Name of a number. */
  Optional<PointName> point(int id) {
    return Optional.ofNullable(pointsById.get(id));
  }

  Basis basis(int id) throws DamagedException {
    Basis basis = basesById.get(id);
    if (basis == null) {
      throw new DamagedException("basis %d is not in the file".formatted(id));
    }
    return basis;
  }

  /** Makes the measurements of a run again. */
  List<Measurement> measurements(Run run) throws DamagedException {
    List<Measurement> measurements = new ArrayList<>(run.samples().size());
    for (Kept kept : run.samples()) {
      measurements.add(measurement(kept));
    }
    return measurements;
  }

  /** Makes the measurement of a kept sample again. */
  Measurement measurement(Kept kept) throws DamagedException {
    return MeasurementChain.restore(kept.sample(), basis(kept.basis()), kept.flags());
  }

  /** Writes all numbers again, for a file that was reopened after a failure; writer only. */
  void restate(Connection connection) throws SQLException {
    for (Map.Entry<Integer, PointName> entry : pointsById.entrySet()) {
      insert(connection, POINT, entry.getKey(), entry.getValue().text());
    }
    for (Map.Entry<Integer, Basis> entry : basesById.entrySet()) {
      insert(connection, BASIS, entry.getKey(), entry.getValue().toText());
    }
  }

  /** Writes copies of names that were kept before there were copies; the caller commits. */
  void completeCopies(Connection connection) throws SQLException {
    for (Map.Entry<Integer, PointName> entry : pointsById.entrySet()) {
      Copy.of(Copy.POINT, entry.getKey(), entry.getValue().text()).putIfMissing(connection);
    }
    for (Map.Entry<Integer, Basis> entry : basesById.entrySet()) {
      Copy.of(Copy.BASIS, entry.getKey(), entry.getValue().toText()).putIfMissing(connection);
    }
  }

  /** Takes a number over from another file; writer only. */
  void adopt(Connection connection, int id, PointName name) throws SQLException {
    insert(connection, POINT, id, name.text());
    put(id, name);
  }

  /** Takes a number over from another file; writer only. */
  void adopt(Connection connection, int id, Basis basis) throws SQLException {
    insert(connection, BASIS, id, basis.toText());
    put(id, basis);
  }

  /** Number of a point; writer only. */
  int number(Connection connection, PointName name) throws SQLException {
    Integer known = points.get(name);
    if (known != null) {
      return known;
    }
    int id = next(pointsById);
    insert(connection, POINT, id, name.text());
    put(id, name);
    return id;
  }

  /** Number of a basis; writer only. */
  int number(Connection connection, Basis basis) throws SQLException {
    Integer known = bases.get(basis);
    if (known != null) {
      return known;
    }
    int id = next(basesById);
    insert(connection, BASIS, id, basis.toText());
    put(id, basis);
    return id;
  }

  private static int next(Map<Integer, ?> byId) {
    return byId.keySet().stream().mapToInt(Integer::intValue).max().orElse(0) + 1;
  }

  private static void insert(Connection connection, String sql, int id, String text)
      throws SQLException {
    Copy.of(sql.equals(POINT) ? Copy.POINT : Copy.BASIS, id, text).put(connection);
    try (PreparedStatement insert = connection.prepareStatement(sql)) {
      insert.setInt(1, id);
      insert.setString(2, text);
      insert.executeUpdate();
    }
    connection.commit();
  }
}
