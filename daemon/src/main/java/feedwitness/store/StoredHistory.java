package feedwitness.store;

import feedwitness.ledger.Attachment;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.ledger.History;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.quantity.TimeSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongConsumer;

/**
 * The history of a service that is stopped, opened for reading only: not an octet of it changes,
 * and no start is counted. Close it.
 */
public final class StoredHistory implements History, EvidenceHistory, AutoCloseable {
  /** Nothing is ever appended. */
  private static final int NO_QUEUE = 16;

  private final H2File file;
  private final Connection keeper;
  private final Catalogue catalogue;
  private final HistoryReader reader;
  private final Findings findings = new Findings();
  private final EvidenceReader records;

  private StoredHistory(H2File file, Connection keeper, Catalogue catalogue) throws SQLException {
    this.file = file;
    this.keeper = keeper;
    this.catalogue = catalogue;
    Dating dating = Dating.load(keeper);
    this.records = new EvidenceReader(file, dating, findings);
    this.reader = new HistoryReader(file, catalogue, dating, new Pending(NO_QUEUE), findings);
    reader.load(keeper);
  }

  /** Opens the history in a directory. */
  public static Opening open(Path directory) {
    H2File file = H2File.readOnly(directory);
    if (!Files.exists(file.path())) {
      return new Opening.Refused(
          "there is no history in %s; name the data directory of the service"
              .formatted(file.directory()));
    }
    return open(file, new Migrator(Migration.all()));
  }

  static Opening open(H2File file, Migrator migrator) {
    Connection connection;
    try {
      connection = file.borrowReader();
    } catch (SQLException e) {
      return new Opening.Refused(words(file, e));
    }
    try {
      int version = migrator.version(connection);
      if (version > migrator.newest()) {
        return refuse(
            connection,
            "%s has layout version %d, this Feedwitness knows up to %d; install a newer Feedwitness"
                .formatted(file.path(), version, migrator.newest()));
      }
      if (version == 0) {
        return refuse(
            connection,
            "%s is a database but no history of Feedwitness; name another".formatted(file.path()));
      }
      if (version < migrator.newest()) {
        return refuse(
            connection,
            "%s has layout version %d, this Feedwitness reads %d; start the service once, it brings the file forward"
                .formatted(file.path(), version, migrator.newest()));
      }
      return new Opening.Opened(new StoredHistory(file, connection, Catalogue.load(connection)));
    } catch (SQLException e) {
      return refuse(connection, words(file, e));
    } catch (IllegalArgumentException e) {
      return refuse(
          connection,
          "%s: %s; install the Feedwitness that wrote it".formatted(file.path(), e.getMessage()));
    }
  }

  private static String words(H2File file, SQLException e) {
    return new LedgerOpener(
            StoreSettings.in(file.directory()),
            TimeSource.system(),
            new Migrator(Migration.all()),
            file,
            () -> 0)
        .refusal(e)
        .message();
  }

  private static Opening refuse(Connection connection, String message) {
    H2File.closeQuietly(connection);
    return new Opening.Refused(message);
  }

  /** What came of opening. */
  public sealed interface Opening {
    record Opened(StoredHistory history) implements Opening {}

    /** {@code message} for people: which file, what is wrong, what to do. */
    record Refused(String message) implements Opening {}
  }

  /** Damage met so far, in words; empty if none. */
  public Optional<String> damage() {
    return findings.first();
  }

  /** See {@link H2Ledger#backup}. */
  public void backup(Path target) throws IOException {
    BackupWriter.write(file, target);
  }

  /** Reads everything there is. */
  Inventory inspect() throws SQLException {
    return new Inspection(keeper, catalogue).run();
  }

  @Override
  public List<PointName> recorded() {
    return reader.recorded();
  }

  @Override
  public Optional<Measurement> latest(PointName point) {
    return reader.latest(point);
  }

  @Override
  public Optional<Measurement> latestReading(PointName point) {
    return reader.latestReading(point);
  }

  @Override
  public Course course(PointName point, Instant from, Instant to, int maxBuckets) {
    return reader.course(point, from, to, maxBuckets);
  }

  @Override
  public void scan(PointName point, Instant from, Instant to, Consumer<Measurement> each) {
    reader.scan(point, from, to, each);
  }

  @Override
  public void retired(PointName point, Instant from, Instant to, LongConsumer minute) {
    reader.retired(point, from, to, minute);
  }

  @Override
  public Optional<Instant> newest() {
    return reader.newest();
  }

  @Override
  public List<Evidence> evidence(EvidenceQuery query) {
    return records.evidence(query);
  }

  @Override
  public Optional<Evidence> evidence(long id) {
    return records.evidence(id);
  }

  @Override
  public Optional<Attachment> attachment(long id) {
    return records.attachment(id);
  }

  @Override
  public Optional<String> state(String name) {
    return records.state(name);
  }

  @Override
  public void close() {
    file.closeIdleReaders();
    H2File.closeQuietly(keeper);
  }
}
