package feedwitness.store;

import java.io.IOException;
import java.net.URI;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;

/**
 * Writes a backup: a zip archive that holds the history file as it was at one moment, and the files
 * of the configuration beside it.
 */
final class BackupWriter {
  /** What must stay free besides the backup, octets: recording goes on meanwhile. */
  private static final long MARGIN = 32L << 20;

  private BackupWriter() {}

  static void write(H2File file, Path target, Map<String, Path> configuration) throws IOException {
    Path folder = target.toAbsolutePath().getParent();
    if (folder == null) {
      throw new IOException("backup: %s is no file name".formatted(target));
    }
    long free = Files.getFileStore(folder).getUsableSpace();
    // adding to the archive writes it once more
    long needed = Files.size(file.path()) * (configuration.isEmpty() ? 1 : 2) + MARGIN;
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
      add(target, configuration);
    } catch (IOException e) {
      Files.deleteIfExists(target);
      throw e;
    } catch (SQLException e) {
      Files.deleteIfExists(target);
      throw new IOException(
          "backup: %s could not be written to %s (%s); check rights and free space there"
              .formatted(file.path(), target, e.getMessage()),
          e);
    }
  }

  /** Small files; what is in the archive already is copied as it stands. */
  private static void add(Path target, Map<String, Path> configuration) throws IOException {
    if (configuration.isEmpty()) {
      return;
    }
    // by its address: a name of any ending is a zip archive then
    URI uri = URI.create("jar:" + target.toUri());
    try (FileSystem zip = FileSystems.newFileSystem(uri, Map.of())) {
      for (Map.Entry<String, Path> each : configuration.entrySet()) {
        Path entry = zip.getPath(BackupArchive.CONFIGURATION + each.getKey());
        Files.createDirectories(entry.getParent());
        Files.copy(each.getValue(), entry);
      }
    }
  }
}
