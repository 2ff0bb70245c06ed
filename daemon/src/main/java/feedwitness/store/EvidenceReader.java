package feedwitness.store;

import feedwitness.ledger.Attachment;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceQuery;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** Reads records and states from the file. For any thread. */
final class EvidenceReader implements EvidenceHistory {
  private static final int PAGE = 500;

  private final H2File file;
  private final Dating dating;
  private final Consumer<String> report;

  EvidenceReader(H2File file, Dating dating, Consumer<String> report) {
    this.file = file;
    this.dating = dating;
    this.report = report;
  }

  private interface Look<T> {
    T at(Connection connection) throws SQLException;
  }

  private <T> T look(Look<T> look) {
    try {
      Connection connection = file.borrowReader();
      try {
        return look.at(connection);
      } finally {
        file.giveBack(connection);
      }
    } catch (SQLException e) {
      throw new IllegalStateException(
          "records cannot be read from %s: %s".formatted(file.path(), e.getMessage()), e);
    }
  }

  @Override
  public List<Evidence> evidence(EvidenceQuery query) {
    return look(connection -> read(connection, query));
  }

  private List<Evidence> read(Connection connection, EvidenceQuery query) throws SQLException {
    List<Evidence> found = new ArrayList<>();
    long after = query.afterId();
    long before = query.beforeId();
    while (found.size() < query.limit()) {
      int wanted = Math.min(PAGE, query.limit());
      List<EvidenceRows.Row> rows =
          EvidenceRows.rows(connection, query, new EvidenceRows.Page(after, before, wanted));
      for (EvidenceRows.Row row : rows) {
        if (query.order() == EvidenceQuery.Order.NEWEST_FIRST) {
          before = row.id();
        } else {
          after = row.id();
        }
        unpack(row.id(), row.packed().toArray())
            .filter(evidence -> lies(evidence, query))
            .ifPresent(found::add);
      }
      if (rows.size() < wanted) {
        break;
      }
    }
    return List.copyOf(found.subList(0, Math.min(found.size(), query.limit())));
  }

  /** The times of a query once more: a record may have got its date later. */
  private static boolean lies(Evidence evidence, EvidenceQuery query) {
    if (query.from().isEmpty() && query.to().isEmpty()) {
      return true;
    }
    return evidence.at().dated()
        && query.from().map(from -> !evidence.at().wall().isBefore(from)).orElse(true)
        && query.to().map(to -> evidence.at().wall().isBefore(to)).orElse(true);
  }

  @Override
  public Optional<Evidence> evidence(long id) {
    return look(connection -> EvidenceRows.packed(connection, id))
        .flatMap(packed -> unpack(id, packed));
  }

  @Override
  public Optional<Attachment> attachment(long id) {
    Optional<byte[]> packed = look(connection -> EvidenceRows.packedPicture(connection, id));
    try {
      return packed.isEmpty()
          ? Optional.empty()
          : Optional.of(EvidenceCodec.unpackPicture(packed.get()).attachment());
    } catch (DamagedException | IllegalArgumentException e) {
      unreadable(id, e);
      return Optional.empty();
    }
  }

  private Optional<Evidence> unpack(long id, byte[] packed) {
    try {
      return Optional.of(dating.apply(EvidenceCodec.unpack(packed)));
    } catch (DamagedException | IllegalArgumentException e) {
      unreadable(id, e);
      return Optional.empty();
    }
  }

  private void unreadable(long id, Exception why) {
    report.accept(
        "history: record %d cannot be read (%s) and is left out; restore a backup to get it back"
            .formatted(id, why.getMessage()));
  }

  @Override
  public Optional<String> state(String name) {
    return look(connection -> EvidenceRows.state(connection, name));
  }
}
