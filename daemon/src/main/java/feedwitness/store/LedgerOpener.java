package feedwitness.store;

import feedwitness.ledger.DurableMark;
import feedwitness.quantity.TimeSource;
import feedwitness.store.LedgerOpening.Reason;
import feedwitness.store.LedgerOpening.Refused;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongSupplier;
import org.h2.api.ErrorCode;
import org.tinylog.Logger;

/** Opens a history file, or says in clear words why not. */
final class LedgerOpener {
  private static final Set<Integer> WRITING_FAILED =
      Set.of(
          ErrorCode.IO_EXCEPTION_1,
          ErrorCode.IO_EXCEPTION_2,
          ErrorCode.FILE_CREATION_FAILED_1,
          ErrorCode.DATABASE_IS_READ_ONLY);

  private final StoreSettings settings;
  private final TimeSource time;
  private final Migrator migrator;
  private final H2File file;
  private final LongSupplier freeOctets;
  private final Findings findings = new Findings();
  private final Salvage salvage;
  private boolean salvageable;

  /**
   * @param freeOctets what the disk of the data directory has free
   */
  LedgerOpener(
      StoreSettings settings,
      TimeSource time,
      Migrator migrator,
      H2File file,
      LongSupplier freeOctets) {
    this.freeOctets = freeOctets;
    this.settings = settings;
    this.time = time;
    this.migrator = migrator;
    this.file = file;
    this.salvage = new Salvage(file, migrator, time, findings);
  }

  LedgerOpening open() {
    Optional<Refused> unusable = unusableDirectory();
    if (unusable.isPresent()) {
      return unusable.get();
    }
    Optional<FileClaim> claim;
    try {
      claim = FileClaim.on(file.directory().resolve(H2File.LOCK));
    } catch (IOException e) {
      return notWritable(file.directory(), "takes no new file (%s)".formatted(e));
    }
    if (claim.isEmpty()) {
      return locked();
    }
    LedgerOpening outcome = openOrSalvage(claim.get());
    if (outcome instanceof Refused) {
      claim.get().close();
    }
    return outcome;
  }

  /** A damaged file is set aside, and recording goes on with what could be saved of it. */
  private LedgerOpening openOrSalvage(FileClaim claim) {
    try {
      salvage.finish();
      Optional<WentBack> lookedOver = claim.afterOrderlyEnd() ? Optional.empty() : lookedOver();
      LedgerOpening outcome = open(claim, lookedOver);
      if (outcome instanceof Refused refused
          && refused.reason() == Reason.DAMAGED
          && !salvageable) {
        // not what a damaged file looks like: what it was may be over, and is told if it is not
        Logger.warn("{}; trying once more", refused.message());
        outcome = open(claim, lookedOver);
      }
      if (outcome instanceof Refused refused && salvageable) {
        Logger.error(refused.message());
        salvage.run();
        outcome = open(claim, Optional.empty());
      }
      return outcome;
    } catch (IOException | SQLException e) {
      return new Refused(
          Reason.DAMAGED,
          "%s is damaged, and what is sound in it could not be saved (%s); move it aside to start afresh, or restore a backup"
              .formatted(file.path(), e.getMessage()));
    }
  }

  private Optional<WentBack> lookedOver() throws IOException {
    if (Files.exists(file.path())) {
      Logger.info(
          "history: the last end was not in order; looking {} over ({} MB)",
          file.path(),
          Files.size(file.path()) >> 20);
    }
    return WentBack.look(file.path());
  }

  private LedgerOpening open(FileClaim claim, Optional<WentBack> lookedOver) {
    Connection connection;
    try {
      connection = file.openWriter();
    } catch (SQLException e) {
      return refusal(e);
    }
    LedgerOpening outcome;
    try {
      outcome = start(connection, claim, lookedOver);
    } catch (SQLException e) {
      outcome = refusal(e);
    } catch (IllegalArgumentException e) {
      outcome =
          new Refused(
              Reason.NEWER,
              "%s: %s; install the Feedwitness that wrote it, or restore a backup"
                  .formatted(file.path(), e.getMessage()));
    }
    if (outcome instanceof Refused) {
      H2File.abandon(connection);
      file.closeIdleReaders();
    }
    return outcome;
  }

  private LedgerOpening start(Connection connection, FileClaim claim, Optional<WentBack> lookedOver)
      throws SQLException {
    int version = migrator.version(connection);
    if (version > migrator.newest()) {
      return new Refused(
          Reason.NEWER,
          "%s has layout version %d, this Feedwitness knows up to %d; install a newer Feedwitness, or restore the backup made before the update"
              .formatted(file.path(), version, migrator.newest()));
    }
    Optional<Top> known = version == 0 ? Optional.empty() : Top.known(connection);
    Optional<String> wentBack = lookedOver.flatMap(found -> found.words(known));
    if (wentBack.isPresent()) {
      salvageable = true;
      return damaged(wentBack.get());
    }
    migrator.forward(connection, file.directory());
    Catalogue catalogue = Catalogue.load(connection);
    catalogue.completeCopies(connection);
    Dating dating = Dating.load(connection);
    Sealer sealer = new Sealer(catalogue, time, findings);
    sealer.seal(connection, key -> false);
    int boot = countBoot(connection);
    H2File.force(connection);
    // after a power cut the file may still list room that was used again: H2 would find that out
    // at the next start, and go back to where nothing was
    file.free(connection);
    Pending pending = new Pending(settings.queueCapacity());
    EvidenceQueue evidence = new EvidenceQueue(EvidenceRows.lastId(connection), pending::hurry);
    HistoryReader reader = new HistoryReader(file, catalogue, dating, pending, findings);
    reader.load(connection);
    Writer writer =
        new Writer(
            file,
            connection,
            catalogue,
            pending,
            sealer,
            dating,
            new Floor(file.path(), settings.freeFloor(), freeOctets),
            new Retention(settings.keepRaw(), time),
            time,
            settings.syncEvery(),
            salvage,
            evidence,
            new DurableMark(boot, 0, time.wall()));
    return new LedgerOpening.Opened(
        new H2Ledger(
            boot,
            claim,
            dating,
            pending,
            writer,
            reader,
            findings,
            evidence,
            new EvidenceReader(file, dating, findings)));
  }

  /** Forced before anyone learns the number: it must never be given twice. */
  private int countBoot(Connection connection) throws SQLException {
    int boot;
    try (PreparedStatement select = connection.prepareStatement("select max(boot) from boot");
        ResultSet row = select.executeQuery()) {
      boot = row.next() ? row.getInt(1) + 1 : 1;
    }
    try (PreparedStatement insert =
        connection.prepareStatement("insert into boot(boot, started_millis) values (?, ?)")) {
      insert.setInt(1, boot);
      insert.setLong(2, time.wall().toEpochMilli());
      insert.executeUpdate();
    }
    Copy.of(Copy.BOOT, boot, Long.toString(time.wall().toEpochMilli())).put(connection);
    connection.commit();
    return boot;
  }

  private Optional<Refused> unusableDirectory() {
    Path directory = file.directory();
    if (directory.toString().contains(";")) {
      return Optional.of(
          notWritable(directory, "has a ';' in its name, which the database cannot open"));
    }
    try {
      Files.createDirectories(directory);
    } catch (IOException e) {
      return Optional.of(notWritable(directory, "cannot be made (%s)".formatted(e)));
    }
    if (!Files.isWritable(directory)) {
      return Optional.of(notWritable(directory, "may not be written by this user"));
    }
    if (Files.exists(file.path()) && !Files.isWritable(file.path())) {
      return Optional.of(notWritable(file.path(), "may not be written by this user"));
    }
    return Optional.empty();
  }

  private static Refused notWritable(Path path, String why) {
    return new Refused(
        Reason.NOT_WRITABLE,
        "data directory: %s %s; give the user of the service the right to write there, or name another directory"
            .formatted(path, why));
  }

  private Refused locked() {
    return new Refused(
        Reason.LOCKED,
        "%s is open in another process, most likely a running Feedwitness; stop that one first, or give this one another data directory"
            .formatted(file.path()));
  }

  Refused refusal(SQLException e) {
    int code = e.getErrorCode();
    if (code == ErrorCode.DATABASE_ALREADY_OPEN_1) {
      return locked();
    }
    if (code == ErrorCode.FILE_VERSION_ERROR_1) {
      return new Refused(
          Reason.NEWER,
          "%s was written by another version of the database; install the Feedwitness that wrote it, or restore a backup"
              .formatted(file.path()));
    }
    if (WRITING_FAILED.contains(code) && !Salvage.isDamage(e)) {
      return new Refused(
          Reason.NOT_WRITABLE,
          "%s cannot be read or written (%s); check rights, free space and health of the disk"
              .formatted(file.path(), e.getMessage()));
    }
    salvageable = Salvage.isDamage(e);
    return damaged(String.valueOf(e.getMessage()));
  }

  private Refused damaged(String why) {
    return new Refused(
        Reason.DAMAGED,
        "%s is damaged (%s); move it aside to start afresh, or restore a backup"
            .formatted(file.path(), why));
  }
}
