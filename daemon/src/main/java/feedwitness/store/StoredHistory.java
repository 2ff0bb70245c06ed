package feedwitness.store;

import feedwitness.quantity.TimeSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;
import java.util.Optional;

/**
 * The history of a service that is stopped, opened for reading only: not an octet of it changes,
 * and no start is counted. Close it.
 */
public final class StoredHistory extends RecordedHistory implements AutoCloseable {
  /** Nothing is ever appended. */
  private static final int NO_QUEUE = 16;

  private final H2File file;
  private final Connection keeper;
  private final Catalogue catalogue;
  private final Findings findings;

  private StoredHistory(
      H2File file,
      Connection keeper,
      Catalogue catalogue,
      HistoryReader reader,
      EvidenceReader records,
      Findings findings) {
    super(reader, records);
    this.file = file;
    this.keeper = keeper;
    this.catalogue = catalogue;
    this.findings = findings;
  }

  private static StoredHistory of(H2File file, Connection keeper) throws SQLException {
    Catalogue catalogue = Catalogue.load(keeper);
    Dating dating = Dating.load(keeper);
    Findings findings = new Findings();
    HistoryReader reader =
        new HistoryReader(file, catalogue, dating, new Pending(NO_QUEUE), findings);
    reader.load(keeper);
    return new StoredHistory(
        file, keeper, catalogue, reader, new EvidenceReader(file, dating, findings), findings);
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
    Optional<WentBack> lookedOver;
    Connection connection;
    try {
      lookedOver =
          FileClaim.afterOrderlyEnd(file.directory().resolve(H2File.LOCK))
              ? Optional.empty()
              : WentBack.look(file.path());
      connection = file.borrowReader();
    } catch (IOException e) {
      return new Opening.Refused("%s cannot be read (%s)".formatted(file.path(), e.getMessage()));
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
      Optional<Top> known = Top.known(connection);
      Optional<String> wentBack = lookedOver.flatMap(found -> found.words(known));
      if (wentBack.isPresent()) {
        return refuse(
            connection,
            "%s is damaged (%s); start the service once, it saves what is there"
                .formatted(file.path(), wentBack.get()));
      }
      return new Opening.Opened(of(file, connection));
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
  public void backup(Path target, Map<String, Path> configuration) throws IOException {
    BackupWriter.write(file, target, configuration);
  }

  /** Reads everything there is. */
  Inventory inspect() throws SQLException {
    return new Inspection(keeper, catalogue).run();
  }

  @Override
  public void close() {
    file.closeIdleReaders();
    H2File.closeQuietly(keeper);
  }
}
