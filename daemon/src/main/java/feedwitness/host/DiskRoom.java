package feedwitness.host;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.LongSupplier;
import org.tinylog.Logger;

/** How much room the disk of a folder has left for this user, in octets. */
public final class DiskRoom implements LongSupplier {
  private final Path folder;

  /**
   * @param folder must exist when asked
   */
  public DiskRoom(Path folder) {
    this.folder = folder;
  }

  /** A disk that cannot be asked is taken as roomy: writing will tell. */
  @Override
  public long getAsLong() {
    try {
      return Files.getFileStore(folder).getUsableSpace();
    } catch (IOException e) {
      Logger.debug(e, "asking the disk of {}", folder);
      return Long.MAX_VALUE;
    }
  }
}
