package feedwitness.store;

import feedwitness.sample.Indication;
import feedwitness.sample.Sample;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.OptionalLong;

/**
 * Tells readings that were brought in from files from those that were taken here. An imported
 * reading may be years old whatever its place in (boot, sequence): it is never "the latest".
 */
final class Imports {
  private Imports() {}

  static boolean isImported(Sample sample) {
    return sample instanceof Indication indication
        && indication.origin() == Indication.Origin.IMPORTED;
  }

  static boolean all(List<Kept> samples) {
    return samples.stream().allMatch(kept -> isImported(kept.sample()));
  }

  /** A probe that was missing for long spoke last in some earlier chunk. */
  static OptionalLong lastOwnChunkWithReading(Connection connection, Catalogue catalogue, int point)
      throws SQLException {
    try (PreparedStatement select =
        connection.prepareStatement(
            "select k, bases from chunk where k between ? and ? and readings > 0"
                + " order by boot desc, last_seq desc")) {
      select.setLong(1, ChunkKey.of(point, ChunkKey.MIN_HOUR, 0));
      select.setLong(2, ChunkKey.of(point, ChunkKey.MAX_HOUR, ChunkKey.MAX_ORDINAL));
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) {
          if (!onlyImported(catalogue, row.getString(2))) {
            return OptionalLong.of(row.getLong(1));
          }
        }
        return OptionalLong.empty();
      }
    }
  }

  private static boolean onlyImported(Catalogue catalogue, String bases) {
    for (String number : bases.split(",", -1)) {
      try {
        if (!catalogue.basis(Integer.parseInt(number)).isImported()) {
          return false;
        }
      } catch (DamagedException | NumberFormatException e) {
        return false;
      }
    }
    return true;
  }
}
