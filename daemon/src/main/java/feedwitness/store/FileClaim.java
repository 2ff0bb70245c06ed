package feedwitness.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.tinylog.Logger;

/**
 * The claim of one ledger on one history file. H2's own lock keeps other processes out but lets a
 * second ledger of the same process in, where both would write. The operating system releases the
 * claim when the process ends, however it ends.
 */
final class FileClaim implements AutoCloseable {
  private final FileChannel channel;

  private FileClaim(FileChannel channel) {
    this.channel = channel;
  }

  /** Empty if someone else has it. */
  static Optional<FileClaim> on(Path lockFile) throws IOException {
    FileChannel channel =
        FileChannel.open(lockFile, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    if (tryLock(channel) == null) {
      channel.close();
      return Optional.empty();
    }
    FileClaim claim = new FileClaim(channel);
    claim.announce("");
    return Optional.of(claim);
  }

  /** Says in the lock file where its holder answers, for commands that find the file taken. */
  void announce(String url) throws IOException {
    channel.truncate(0);
    channel.write(ByteBuffer.wrap(url.getBytes(StandardCharsets.UTF_8)), 0);
  }

  private static @Nullable FileLock tryLock(FileChannel channel) throws IOException {
    try {
      return channel.tryLock();
    } catch (OverlappingFileLockException e) {
      // this very process has it
      return null;
    }
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      Logger.debug(e, "releasing the claim on the history file");
    }
  }
}
