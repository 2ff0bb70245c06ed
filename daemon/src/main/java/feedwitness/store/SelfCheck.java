package feedwitness.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import org.h2.api.ErrorCode;
import org.jspecify.annotations.Nullable;

/**
 * Looks, after a failure, whether what was written last can be read: every unsealed row, and the
 * last chunk of each point. What lies further back was there before and is checked when it is read.
 */
final class SelfCheck {
  private SelfCheck() {}

  /**
   * @param safe how far what was forced goes at least
   * @throws SQLException with the code of a damaged file if it cannot
   */
  static void run(Connection connection, Optional<Top> safe) throws SQLException {
    Optional<Top> known = Top.known(connection);
    if (safe.isPresent() && (known.isEmpty() || known.get().compareTo(safe.get()) < 0)) {
      throw damaged("it went back to a state from before " + safe.get(), null);
    }
    read(connection, "select packed from hot order by n");
    read(connection, "select c.packed from point p join chunk c on c.k = p.last_chunk");
    read(connection, "select r.packed from point p join rollup_minute r on r.k = p.last_chunk");
  }

  private static void read(Connection connection, String select) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(select);
        ResultSet row = statement.executeQuery()) {
      while (row.next()) {
        Envelope.unpack(row.getBytes(1));
      }
    } catch (DamagedException e) {
      throw damaged("what was written last is damaged: " + e.getMessage(), e);
    }
  }

  private static SQLException damaged(String what, @Nullable Exception cause) {
    return new SQLException(
        "the file was opened again, but " + what, "", ErrorCode.FILE_CORRUPTED_1, cause);
  }
}
