package feedwitness.store;

import feedwitness.ledger.History;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;

/**
 * The history of a service that is not running, for looking only: nothing is sealed, nothing
 * brought forward, no start counted. While it is open no service can start on it, so close it soon.
 */
public final class StoredHistory implements AutoCloseable {
  private final FileClaim claim;
  private final H2File file;
  private final Connection connection;
  private final History history;

  private StoredHistory(FileClaim claim, H2File file, Connection connection, History history) {
    this.claim = claim;
    this.file = file;
    this.connection = connection;
    this.history = history;
  }

  /** What came of opening. */
  public sealed interface Outcome {
    /** Ready; the caller closes it. */
    record Opened(StoredHistory stored) implements Outcome {}

    /** Not opened; the message names file, fault and remedy. */
    record Refused(String message) implements Outcome {}
  }

  /** Opens what a data directory holds. */
  public static Outcome open(Path directory) {
    H2File file = new H2File(directory);
    if (!Files.exists(file.path())) {
      return new Outcome.Refused(
          "there is no history in %s; name the data directory of the service"
              .formatted(file.directory()));
    }
    Optional<FileClaim> claim;
    try {
      claim = FileClaim.on(file.directory().resolve(H2File.NAME + ".lock"));
    } catch (IOException e) {
      return new Outcome.Refused(
          "%s cannot be claimed (%s); run this as the user of the service"
              .formatted(file.path(), e.getMessage()));
    }
    if (claim.isEmpty()) {
      return new Outcome.Refused(
          "%s is open in another process; name the running service with --url"
              .formatted(file.path()));
    }
    Outcome outcome = open(file, claim.get());
    if (outcome instanceof Outcome.Refused) {
      claim.get().close();
    }
    return outcome;
  }

  private static Outcome open(H2File file, FileClaim claim) {
    Connection connection;
    try {
      connection = file.openWriter();
    } catch (SQLException e) {
      return unreadable(file, String.valueOf(e.getMessage()));
    }
    Outcome outcome = look(file, claim, connection);
    if (outcome instanceof Outcome.Refused) {
      H2File.closeQuietly(connection);
    }
    return outcome;
  }

  private static Outcome look(H2File file, FileClaim claim, Connection connection) {
    Migrator migrator = new Migrator(Migration.all());
    try {
      int version = migrator.version(connection);
      if (version != migrator.newest()) {
        return new Outcome.Refused(
            "%s has layout version %d, this Feedwitness reads %d; %s"
                .formatted(
                    file.path(),
                    version,
                    migrator.newest(),
                    version < migrator.newest()
                        ? "start the service once, which brings it forward"
                        : "install a newer Feedwitness"));
      }
      Catalogue catalogue = Catalogue.load(connection);
      Pending nothing = new Pending(StoreSettings.DEFAULT_QUEUE);
      return new Outcome.Opened(
          new StoredHistory(
              claim,
              file,
              connection,
              new HistoryReader(file, catalogue, nothing, new Findings())));
    } catch (SQLException | IllegalArgumentException e) {
      return unreadable(file, String.valueOf(e.getMessage()));
    }
  }

  private static Outcome.Refused unreadable(H2File file, String why) {
    return new Outcome.Refused(
        "%s cannot be read (%s); install the Feedwitness that wrote it, or restore a backup"
            .formatted(file.path(), why));
  }

  /** What is kept; courses and scans only, the latest of each point is not looked up. */
  public History history() {
    return history;
  }

  @Override
  public void close() {
    file.closeIdleReaders();
    H2File.closeQuietly(connection);
    claim.close();
  }
}
