package feedwitness.store;

import feedwitness.ledger.Evidence;
import feedwitness.measurement.Basis;
import feedwitness.quantity.PointName;
import feedwitness.quantity.TimeSource;
import java.io.EOFException;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import java.util.function.Consumer;
import org.h2.api.ErrorCode;
import org.tinylog.Logger;

/**
 * Makes a fresh history out of a damaged one: all envelopes that are sound. The damaged file is
 * kept under another name. A power cut on the way leaves the damaged file in place, or the fresh
 * one.
 */
final class Salvage {
  static final String FRESH = "history-salvage";

  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss", Locale.ROOT).withZone(ZoneOffset.UTC);

  /** What H2 says of a file it cannot make sense of. */
  private static final Set<Integer> DAMAGE =
      Set.of(ErrorCode.FILE_CORRUPTED_1, ErrorCode.GENERAL_ERROR_1);

  private final H2File file;
  private final Migrator migrator;
  private final TimeSource time;
  private final Consumer<String> report;

  /**
   * @param report takes what was done, for people
   */
  Salvage(H2File file, Migrator migrator, TimeSource time, Consumer<String> report) {
    this.file = file;
    this.migrator = migrator;
    this.time = time;
    this.report = report;
  }

  /** Whether a failure says that the file itself is damaged. */
  static boolean isDamage(SQLException failure) {
    return DAMAGE.contains(failure.getErrorCode()) || endsTooEarly(failure);
  }

  private static boolean endsTooEarly(SQLException failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof EOFException) {
        return true;
      }
    }
    return false;
  }

  /** Takes the last step of a salvage that a power cut ended. */
  void finish() throws IOException {
    Path fresh = file.beside(FRESH).path();
    if (!Files.exists(file.path()) && Files.exists(fresh)) {
      move(fresh, file.path());
    }
  }

  /** Sets the damaged file aside and puts in its place what could be saved of it. */
  void run() throws IOException, SQLException {
    Path aside = aside();
    H2File fresh = file.beside(FRESH);
    Files.deleteIfExists(fresh.path());
    Salvaged salvaged;
    try (Carving carving = Carving.of(file.path())) {
      Connection connection = fresh.openWriter();
      try {
        migrator.forward(connection, file.directory());
        salvaged = fill(connection, carving);
        H2File.shutDown(connection);
      } finally {
        H2File.closeQuietly(connection);
      }
    }
    move(file.path(), aside);
    move(fresh.path(), file.path());
    report.accept(
        "history: %s was damaged; it was set aside as %s, and %d samples of %d hours could be saved from it, the roll-ups of %d more hours, and %d records; compare with your backup"
            .formatted(
                file.path(),
                aside.getFileName(),
                salvaged.samples(),
                salvaged.hours(),
                salvaged.minutes(),
                salvaged.records()));
  }

  private record Salvaged(long samples, long hours, long minutes, long records) {}

  private Salvaged fill(Connection connection, Carving carving) throws SQLException, IOException {
    Catalogue catalogue = Catalogue.load(connection);
    Dating dating = new Dating();
    Set<Integer> boots = new HashSet<>();
    adoptNames(connection, carving, catalogue, dating, boots);
    for (Carving.Place place : carving.runs()) {
      int point = place.facts().key().point();
      boots.add(place.facts().key().boot());
      if (catalogue.point(point).isEmpty()) {
        catalogue.adopt(connection, point, new PointName("nameless-" + point));
      }
    }
    dating.saved(dating.save(connection, time.wall().toEpochMilli()));
    for (Evidence record : carving.evidence()) {
      EvidenceRows.put(connection, record);
      boots.add(record.at().boot());
    }
    for (EvidenceCodec.Picture picture : carving.pictures()) {
      EvidenceRows.putPicture(connection, picture);
    }
    for (int boot : boots) {
      noteBoot(connection, boot);
    }
    connection.commit();
    Rebuilding rebuilding =
        new Rebuilding(connection, catalogue, carving, new Sealer(catalogue, time, report));
    rebuilding.runs();
    rebuilding.minutes();
    return new Salvaged(
        rebuilding.samples(),
        rebuilding.hours(),
        rebuilding.minutesOnly(),
        carving.evidence().size());
  }

  private static void adoptNames(
      Connection connection,
      Carving carving,
      Catalogue catalogue,
      Dating dating,
      Set<Integer> boots)
      throws SQLException {
    for (Copy copy : carving.copies()) {
      try {
        switch (copy.kind()) {
          case Copy.POINT -> catalogue.adopt(connection, copy.number(), new PointName(copy.text()));
          case Copy.BASIS -> catalogue.adopt(connection, copy.number(), Basis.parse(copy.text()));
          case Copy.DATING -> dating.adopt(copy.number(), Long.parseLong(copy.text()));
          default -> boots.add(copy.number());
        }
      } catch (IllegalArgumentException e) {
        Logger.warn(e, "history: a name in the damaged file makes no sense");
      }
    }
  }

  private void noteBoot(Connection connection, int boot) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement("merge into boot(boot, started_millis) values (?, ?)")) {
      insert.setInt(1, boot);
      insert.setLong(2, time.wall().toEpochMilli());
      insert.executeUpdate();
    }
    Copy.of(Copy.BOOT, boot, "salvaged").put(connection);
  }

  private Path aside() {
    String name = H2File.NAME + "-damaged-" + WHEN.format(time.wall());
    Path aside = file.directory().resolve(name + H2File.SUFFIX);
    for (int i = 2; Files.exists(aside); i++) {
      aside = file.directory().resolve("%s-%d%s".formatted(name, i, H2File.SUFFIX));
    }
    return aside;
  }

  private static void move(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    try (FileChannel directory =
        FileChannel.open(to.toAbsolutePath().resolveSibling(""), StandardOpenOption.READ)) {
      directory.force(true);
    }
  }
}
