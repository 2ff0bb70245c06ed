package feedwitness.store;

import feedwitness.quantity.PointName;
import feedwitness.quantity.TimeSource;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Predicate;

/** Turns hot rows into chunks: all complete runs, in one transaction. Writer only. */
final class Sealer {
  private final Catalogue catalogue;
  private final TimeSource time;
  private final Consumer<String> report;

  /**
   * @param report takes what could not be read again and was set aside, for people
   */
  Sealer(Catalogue catalogue, TimeSource time, Consumer<String> report) {
    this.catalogue = catalogue;
    this.time = time;
    this.report = report;
  }

  /**
   * Seals every run but the last of each point, and that too unless {@code stillOpen}. What stays
   * is packed anew into one hot row.
   *
   * @return the runs that stay, by point
   */
  Map<Integer, RunKey> seal(Connection connection, Predicate<RunKey> stillOpen)
      throws SQLException {
    Optional<Long> last = HotRows.last(connection);
    if (last.isEmpty()) {
      return Map.of();
    }
    List<Run> stay = new ArrayList<>();
    Map<Integer, RunKey> open = new HashMap<>();
    Set<Long> damaged = new HashSet<>();
    for (PointName name : catalogue.points()) {
      int point = catalogue.find(name).orElseThrow();
      List<Kept> samples =
          HotRows.read(
              connection,
              point,
              name,
              key -> true,
              (number, packed, what) -> {
                if (damaged.add(number)) {
                  setAside(connection, "unsealed samples of all points", packed, what);
                }
              });
      List<Run> runs = samples.isEmpty() ? List.of() : Run.cut(point, samples);
      for (int i = 0; i < runs.size(); i++) {
        Run run = runs.get(i);
        if (i == runs.size() - 1 && stillOpen.test(run.key())) {
          stay.add(run);
          open.put(point, run.key());
        } else {
          write(connection, run);
        }
      }
    }
    replace(connection, last.get(), stay);
    connection.commit();
    return open;
  }

  /** Writes a run as a chunk, or sets it aside if that cannot be done; leaves the commit. */
  void write(Connection connection, Run run) throws SQLException {
    try {
      write(connection, PackedChunk.of(run, catalogue.measurements(run)));
    } catch (DamagedException e) {
      setAside(connection, "an hour of a point", HotCodec.pack(List.of(run)), e);
    }
  }

  /** Writes chunks; leaves the commit. */
  static void write(Connection connection, List<PackedChunk> chunks) throws SQLException {
    ChunkWriter writer = new ChunkWriter(connection);
    for (PackedChunk chunk : chunks) {
      writer.write(chunk);
    }
    writer.finish();
  }

  private static void replace(Connection connection, long last, List<Run> stay)
      throws SQLException {
    HotRows.remove(connection, last);
    if (stay.isEmpty()) {
      return;
    }
    List<byte[]> rows = HotRows.pack(stay);
    // ends at the number that was last, so that order and the next number stand
    long number = last - rows.size() + 1;
    for (byte[] row : rows) {
      HotRows.put(connection, number++, row);
    }
  }

  private void setAside(Connection connection, String what, byte[] packed, DamagedException why)
      throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "insert into damaged(found_millis, what, packed) values (?, ?, ?)")) {
      insert.setLong(1, time.wall().toEpochMilli());
      insert.setString(2, what + ": " + why.getMessage());
      insert.setBytes(3, packed);
      insert.executeUpdate();
    }
    report.accept(
        "history: %s cannot be read (%s) and were set aside; restore a backup to get them back"
            .formatted(what, why.getMessage()));
  }
}
