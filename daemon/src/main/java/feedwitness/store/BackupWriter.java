package feedwitness.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;

/** Writes a backup: a zip archive that holds the history file as it was at one moment. */
final class BackupWriter {
  /** What must stay free besides the backup, octets: recording goes on meanwhile. */
  private static final long MARGIN = 32L << 20;

  private BackupWriter() {}

  static void write(H2File file, Path target) throws IOException {
    Path folder = target.toAbsolutePath().getParent();
    if (folder == null) {
      throw new IOException("backup: %s is no file name".formatted(target));
    }
    long free = Files.getFileStore(folder).getUsableSpace();
    long needed = Files.size(file.path()) + MARGIN;
    if (free < needed) {
      throw new IOException(
          "backup: %s has %d MB free, %d MB are needed; make room or name another place"
              .formatted(folder, free >> 20, needed >> 20));
    }
    try {
      Connection connection = file.borrowReader();
      try (Statement statement = connection.createStatement()) {
        statement.execute("backup to '" + target.toString().replace("'", "''") + "'");
      } finally {
        file.giveBack(connection);
      }
    } catch (SQLException e) {
      Files.deleteIfExists(target);
      throw new IOException(
          "backup: %s could not be written to %s (%s); check rights and free space there"
              .formatted(file.path(), target, e.getMessage()),
          e);
    }
  }
}
