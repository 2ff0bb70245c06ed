package feedwitness.store;

import feedwitness.quantity.TimeSource;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.UserPrincipal;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.tinylog.Logger;

/**
 * Puts a backup in the place of a history. The backup is unpacked beside the history and read from
 * end to end before anything is replaced; what is replaced is kept under another name.
 */
public final class Restore {
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH-mm-ss").withZone(ZoneOffset.UTC);
  private static final String WORKSHOP = "restoring";

  private final Path directory;
  private final TimeSource time;

  public Restore(Path directory, TimeSource time) {
    this.directory = directory.toAbsolutePath().normalize();
    this.time = time;
  }

  /** What became of it. */
  public sealed interface Outcome {
    /**
     * In place.
     *
     * @param replaced what was there before; empty if nothing was
     * @param configuration folder with the configuration of the backup, for people to compare;
     *     empty if it has none
     */
    record Restored(Inventory holds, Optional<Path> replaced, Optional<Path> configuration)
        implements Outcome {}

    /** Only looked at. */
    record Checked(Inventory holds) implements Outcome {}

    /** Nothing was replaced. */
    record Refused(String message) implements Outcome {}
  }

  /**
   * Reads a backup from end to end in a temporary folder; a running service is not touched.
   *
   * @param workshop an existing directory with room for the unpacked history
   */
  public static Outcome check(Path archive, Path workshop) {
    Path folder = workshop.resolve("feedwitness-check-" + ProcessHandle.current().pid());
    try {
      Files.createDirectory(folder);
      return inspect(archive, folder);
    } catch (IOException e) {
      return new Outcome.Refused(String.valueOf(e.getMessage()));
    } finally {
      removeQuietly(folder);
    }
  }

  /**
   * Restores, if nobody has the history open.
   *
   * @param evenDamaged also a backup parts of which cannot be read
   */
  public Outcome run(Path archive, boolean evenDamaged) {
    try {
      Files.createDirectories(directory);
      Optional<FileClaim> claim = FileClaim.on(directory.resolve(H2File.LOCK));
      if (claim.isEmpty()) {
        return new Outcome.Refused(
            "%s is in use by a running Feedwitness; stop it first (for example: sudo systemctl stop feedwitness), then restore, then start it again"
                .formatted(history()));
      }
      try (FileClaim held = claim.get()) {
        held.announce("");
        return replace(archive, evenDamaged);
      }
    } catch (IOException e) {
      return new Outcome.Refused(
          "restore: %s (%s); nothing was replaced; check the rights of this user in %s"
              .formatted(e.getMessage(), e.getClass().getSimpleName(), directory));
    }
  }

  private Outcome replace(Path archive, boolean evenDamaged) throws IOException {
    Path folder = directory.resolve(WORKSHOP);
    removeQuietly(folder);
    Files.createDirectory(folder);
    try {
      Outcome looked = inspect(archive, folder);
      if (!(looked instanceof Outcome.Checked checked)) {
        return looked;
      }
      if (checked.holds().damaged() > 0 && !evenDamaged) {
        return new Outcome.Refused(
            "%s: %d pieces of it cannot be read (%s); name an older backup, or take what is left of this one with --even-if-damaged"
                .formatted(archive, checked.holds().damaged(), checked.holds().damage().get(0)));
      }
      keepCountingBoots(folder);
      Optional<Path> replaced = swap(folder.resolve(BackupArchive.ENTRY));
      return new Outcome.Restored(checked.holds(), replaced, layConfigurationBeside(archive));
    } finally {
      removeQuietly(folder);
    }
  }

  /** Never over the one in use: that may be newer, and lie where this user may not write. */
  private Optional<Path> layConfigurationBeside(Path archive) {
    Path folder = freeName("configuration-from-backup-" + WHEN.format(time.wall()), "");
    try {
      if (BackupArchive.unpackConfiguration(archive, folder) > 0) {
        giveToOwner(folder);
        return Optional.of(folder);
      }
    } catch (IOException e) {
      Logger.warn("the configuration in {} cannot be unpacked: {}", archive, e.getMessage());
    }
    return Optional.empty();
  }

  private static Outcome inspect(Path archive, Path folder) {
    try {
      BackupArchive.unpack(archive, folder.resolve(BackupArchive.ENTRY));
    } catch (IOException e) {
      return new Outcome.Refused(String.valueOf(e.getMessage()));
    }
    bringForward(folder);
    StoredHistory.Opening opening = StoredHistory.open(folder);
    if (opening instanceof StoredHistory.Opening.Refused refused) {
      return new Outcome.Refused(
          "%s cannot be restored: %s"
              .formatted(
                  archive,
                  refused.message().replace(folder.resolve(BackupArchive.ENTRY).toString(), "it")));
    }
    try (StoredHistory history = ((StoredHistory.Opening.Opened) opening).history()) {
      return new Outcome.Checked(history.inspect());
    } catch (SQLException e) {
      return new Outcome.Refused(
          "%s cannot be read to its end (%s); name an older backup"
              .formatted(archive, e.getMessage()));
    }
  }

  /** The unpacked copy only; what cannot be brought forward is told by the opening after it. */
  private static void bringForward(Path folder) {
    Migrator migrator = new Migrator(Migration.all());
    try (Connection connection = new H2File(folder).openWriter()) {
      int version = migrator.version(connection);
      if (version > 0 && version < migrator.newest()) {
        migrator.forward(connection, folder);
        H2File.force(connection);
      }
    } catch (SQLException e) {
      Logger.debug(e, "the backup cannot be opened");
    }
  }

  /**
   * The number of a start is never given twice: readings of starts after the backup may have been
   * exported, and a browser may remember them.
   */
  private void keepCountingBoots(Path folder) {
    if (!Files.exists(history())) {
      return;
    }
    H2File old = H2File.readOnly(directory);
    try (Connection before = old.borrowReader();
        PreparedStatement select = before.prepareStatement("select max(boot) from boot");
        ResultSet row = select.executeQuery()) {
      int boot = row.next() ? row.getInt(1) : 0;
      try (Connection fresh = new H2File(folder).openWriter();
          PreparedStatement merge =
              fresh.prepareStatement("merge into boot(boot, started_millis) values (?, ?)")) {
        merge.setInt(1, boot);
        merge.setLong(2, time.wall().toEpochMilli());
        if (boot > 0) {
          merge.executeUpdate();
          fresh.commit();
        }
        H2File.force(fresh);
      }
    } catch (SQLException e) {
      Logger.info("starts of the replaced history are not known: {}", e.getMessage());
    }
  }

  /** Restored with sudo, the service must still be able to open it. */
  private void giveToOwner(Path file) {
    try {
      UserPrincipal owner = Files.getOwner(Files.exists(history()) ? history() : directory);
      if (!Files.getOwner(file).equals(owner)) {
        Files.setOwner(file, owner);
      }
    } catch (IOException | UnsupportedOperationException e) {
      Logger.warn("{} keeps its owner: {}", file, e.getMessage());
    }
  }

  private Optional<Path> swap(Path fresh) throws IOException {
    giveToOwner(fresh);
    giveToOwner(directory.resolve(H2File.LOCK));
    Optional<Path> replaced = Optional.empty();
    if (Files.exists(history())) {
      Path aside = freeName("history-replaced-" + WHEN.format(time.wall()), H2File.SUFFIX);
      Files.move(history(), aside, StandardCopyOption.ATOMIC_MOVE);
      replaced = Optional.of(aside);
    }
    try {
      Files.move(fresh, history(), StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      if (replaced.isPresent()) {
        Files.move(replaced.get(), history(), StandardCopyOption.ATOMIC_MOVE);
      }
      throw e;
    }
    forceNames();
    return replaced;
  }

  /** A power cut must not leave the directory without either file. */
  private void forceNames() {
    try (FileChannel names = FileChannel.open(directory, StandardOpenOption.READ)) {
      names.force(true);
    } catch (IOException e) {
      Logger.debug(e, "this file system does not force directories");
    }
  }

  private Path freeName(String stem, String ending) {
    Path name = directory.resolve(stem + ending);
    for (int i = 2; Files.exists(name); i++) {
      name = directory.resolve(stem + "-" + i + ending);
    }
    return name;
  }

  private Path history() {
    return directory.resolve(H2File.NAME + H2File.SUFFIX);
  }

  private static void removeQuietly(Path folder) {
    if (!Files.isDirectory(folder)) {
      return;
    }
    try (Stream<Path> inside = Files.walk(folder)) {
      List<Path> innermostFirst = inside.sorted(Comparator.reverseOrder()).toList();
      for (Path path : innermostFirst) {
        Files.deleteIfExists(path);
      }
    } catch (IOException e) {
      Logger.warn("{} could not be removed: {}", folder, e.getMessage());
    }
  }
}
