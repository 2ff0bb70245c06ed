package feedwitness.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;

/** Who has the history of a directory open. */
public sealed interface Occupancy {

  /** Nobody; the history can be opened. */
  record Free() implements Occupancy {}

  /** There is no history in the directory. */
  record Absent() implements Occupancy {}

  /** A service or a command has it. {@code url}: where it answers; empty if it did not say. */
  record Taken(String url) implements Occupancy {}

  /** This user may not look. {@code path}: what may not be read. */
  record Hidden(Path path) implements Occupancy {}

  /** Looks at a directory; changes nothing there. */
  static Occupancy of(Path directory) {
    Path lock = directory.resolve(H2File.LOCK);
    Path history = directory.resolve(H2File.NAME + H2File.SUFFIX);
    if (Files.isDirectory(directory) && !Files.isExecutable(directory)) {
      return new Hidden(directory);
    }
    try (FileChannel channel = FileChannel.open(lock, StandardOpenOption.READ)) {
      if (isFree(channel)) {
        return Files.exists(history) ? readable(history) : new Absent();
      }
      return new Taken(FileClaim.addressIn(Files.readString(lock)));
    } catch (NoSuchFileException e) {
      return Files.exists(history) ? readable(history) : new Absent();
    } catch (AccessDeniedException e) {
      return new Hidden(lock);
    } catch (IOException e) {
      return new Hidden(lock);
    }
  }

  private static Occupancy readable(Path history) {
    return Files.isReadable(history) ? new Free() : new Hidden(history);
  }

  private static boolean isFree(FileChannel channel) throws IOException {
    try (@Nullable FileLock lock = channel.tryLock(0, Long.MAX_VALUE, true)) {
      return lock != null;
    } catch (OverlappingFileLockException e) {
      // this very process has it
      return false;
    }
  }
}
