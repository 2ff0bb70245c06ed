package feedwitness.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
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
  /** Stands in the lock file while nobody has the history open and its last end was in order. */
  private static final String CLOSED = "closed";

  /** No address is longer. */
  private static final int MOST_OCTETS = 4_096;

  private final FileChannel channel;
  private final boolean afterOrderlyEnd;

  private FileClaim(FileChannel channel, boolean afterOrderlyEnd) {
    this.channel = channel;
    this.afterOrderlyEnd = afterOrderlyEnd;
  }

  /** Empty if someone else has it. */
  static Optional<FileClaim> on(Path lockFile) throws IOException {
    FileChannel channel =
        FileChannel.open(
            lockFile, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
    if (tryLock(channel) == null) {
      channel.close();
      return Optional.empty();
    }
    ByteBuffer text = ByteBuffer.allocate(MOST_OCTETS);
    channel.read(text, 0);
    String before = new String(text.array(), 0, text.position(), StandardCharsets.UTF_8);
    FileClaim claim = new FileClaim(channel, before.equals(CLOSED));
    claim.announce("");
    // before anything is written to the history: else a cut would look like an orderly end
    channel.force(true);
    return Optional.of(claim);
  }

  /** Whether whoever had the history before closed it in order; unknown counts as no. */
  boolean afterOrderlyEnd() {
    return afterOrderlyEnd;
  }

  /** The same of a file nobody has claimed. */
  static boolean afterOrderlyEnd(Path lockFile) throws IOException {
    return Files.exists(lockFile) && Files.readString(lockFile).equals(CLOSED);
  }

  /** The address in the text of a lock file; empty if it holds none. */
  static String addressIn(String text) {
    return text.equals(CLOSED) ? "" : text.strip();
  }

  /** Notes that the history is closed in order, all of it on disk. */
  void closedInOrder() {
    try {
      announce(CLOSED);
      channel.force(true);
    } catch (IOException e) {
      Logger.debug(e, "the next start will look the history file over");
    }
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
