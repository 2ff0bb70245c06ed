package feedwitness.store;

import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads every row of a history file, page by page, and takes stock. */
final class Inspection {
  private static final int PAGE = 64;
  private static final int MOST_WORDS = 10;

  private final Connection connection;
  private final Catalogue catalogue;
  private final List<String> damage = new ArrayList<>();
  private long samples;
  private long undated;
  private long damaged;
  private long firstMillis = Long.MAX_VALUE;
  private long lastMillis = Long.MIN_VALUE;

  Inspection(Connection connection, Catalogue catalogue) {
    this.connection = connection;
    this.catalogue = catalogue;
  }

  Inventory run() throws SQLException {
    each("chunk", "k", "samples, packed", this::chunk);
    each("hot", "n", "0, packed", this::hot);
    each("rollup_day", "k", "0, packed", this::day);
    each("rollup_hour", "k", "samples, whole", this::rollup);
    each("rollup_quarter", "k", "0, packed", this::rollup);
    each("rollup_minute", "k", "0, packed", this::rollup);
    each("evidence", "id", "0, packed", this::evidence);
    each("evidence_picture", "id", "0, packed", this::picture);
    boolean dated = firstMillis <= lastMillis;
    return new Inventory(
        catalogue.points(),
        samples,
        undated,
        dated ? Optional.of(Instant.ofEpochMilli(firstMillis)) : Optional.empty(),
        dated ? Optional.of(Instant.ofEpochMilli(lastMillis)) : Optional.empty(),
        damaged,
        damage);
  }

  private interface Look {
    void at(long key, int samples, byte[] packed) throws DamagedException;
  }

  private void each(String table, String key, String columns, Look look) throws SQLException {
    long next = Long.MIN_VALUE;
    boolean more = true;
    while (more) {
      try (PreparedStatement select =
          connection.prepareStatement(
              "select %s, %s from %s where %s >= ? order by %s limit %d"
                  .formatted(key, columns, table, key, key, PAGE))) {
        select.setLong(1, next);
        try (ResultSet row = select.executeQuery()) {
          int rows = 0;
          for (; row.next(); rows++) {
            long at = row.getLong(1);
            next = at + 1;
            look(table, at, row.getInt(2), row.getBytes(3), look);
          }
          more = rows == PAGE;
        }
      }
    }
  }

  private void look(String table, long key, int count, byte[] packed, Look look) {
    try {
      look.at(key, count, packed);
    } catch (DamagedException | RuntimeException e) {
      damaged++;
      if (damage.size() < MOST_WORDS) {
        damage.add("row %d of %s: %s".formatted(key, table, e.getMessage()));
      }
    }
  }

  private void chunk(long key, int count, byte[] packed) throws DamagedException {
    ByteSource source = new ByteSource(Envelope.unpack(packed));
    Run run = read(source);
    if (run.key().hour() != ChunkKey.hour(key) || run.samples().size() != count) {
      throw new DamagedException(
          "holds %d samples of hour %d instead of %d of hour %d"
              .formatted(run.samples().size(), run.key().hour(), count, ChunkKey.hour(key)));
    }
    note(run);
  }

  private void hot(long number, int unused, byte[] packed) throws DamagedException {
    ByteSource source = new ByteSource(Envelope.unpack(packed));
    while (source.remaining() > 0) {
      note(read(source.stretch(source.count(source.remaining()))));
    }
  }

  private Run read(ByteSource source) throws DamagedException {
    RunKey key = RunCodec.readKey(source);
    PointName point =
        catalogue
            .point(key.point())
            .orElseThrow(
                () -> new DamagedException("point %d is not in the file".formatted(key.point())));
    return RunCodec.read(source, key, point);
  }

  private void note(Run run) throws DamagedException {
    for (Kept kept : run.samples()) {
      Stamp stamp = catalogue.measurement(kept).stamp();
      samples++;
      if (stamp.dated()) {
        firstMillis = Math.min(firstMillis, stamp.wallMillis());
        lastMillis = Math.max(lastMillis, stamp.wallMillis());
      } else {
        undated++;
      }
    }
  }

  private void evidence(long id, int unused, byte[] packed) throws DamagedException {
    if (EvidenceCodec.unpack(packed).id() != id) {
      throw new DamagedException("holds another record");
    }
  }

  private void picture(long id, int unused, byte[] packed) throws DamagedException {
    if (EvidenceCodec.unpackPicture(packed).id() != id) {
      throw new DamagedException("holds another picture");
    }
  }

  private void day(long key, int unused, byte[] packed) throws DamagedException {
    if (packed.length > 0) {
      DayCodec.unpack(packed);
    }
  }

  private void rollup(long key, int unused, byte[] packed) throws DamagedException {
    RollupCodec.unpack(packed);
  }
}
