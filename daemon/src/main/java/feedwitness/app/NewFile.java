package feedwitness.app;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * A file that comes into being whole or not at all: written beside its place, forced to disk, then
 * given its name. Never replaces one that is there.
 */
final class NewFile {
  private NewFile() {}

  /** Writes the content. */
  interface Content {
    void writeTo(OutputStream out) throws IOException;
  }

  /**
   * Makes a file.
   *
   * @throws IOException in words for people; nothing is left behind then
   */
  static void make(Path target, Content content) throws IOException {
    refuseExisting(target);
    Path part = target.resolveSibling(target.getFileName() + ".part");
    try {
      try (OutputStream out =
          Files.newOutputStream(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
        content.writeTo(out);
      }
      force(part);
      refuseExisting(target);
      move(part, target);
    } catch (FileAlreadyExistsException e) {
      throw new IOException(
          "%s is there from an attempt that was broken off, or another one is at work; remove it if not"
              .formatted(e.getFile()),
          e);
    } catch (NoSuchFileException e) {
      throw new IOException(
          "there is no folder %s; make it, or name another"
              .formatted(target.toAbsolutePath().getParent()),
          e);
    } catch (IOException | RuntimeException e) {
      Files.deleteIfExists(part);
      throw e;
    }
  }

  static void refuseExisting(Path target) throws IOException {
    if (Files.exists(target)) {
      throw new IOException(
          "%s is there already and is left as it is; name a new file".formatted(target));
    }
  }

  private static void move(Path part, Path target) throws IOException {
    try {
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(part, target);
    }
  }

  private static void force(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }
}
