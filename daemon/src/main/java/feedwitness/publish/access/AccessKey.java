package feedwitness.publish.access;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;

/**
 * The secret that opens the service to other machines: without one it stays on loopback, and with
 * it commands prove that they may act. It lies in a file of its own and is shown nowhere.
 */
public final class AccessKey {
  /** Fewer characters could be tried. */
  public static final int SHORTEST = 32;

  private static final int LONGEST = 256;
  private static final int FEWEST_DIFFERENT = 12;

  /** Whoever may write it could put a key of his own there; others may not even read it. */
  private static final Set<PosixFilePermission> FORBIDDEN =
      Set.of(
          PosixFilePermission.GROUP_WRITE,
          PosixFilePermission.OTHERS_READ,
          PosixFilePermission.OTHERS_WRITE);

  private final String text;

  private AccessKey(String text) {
    this.text = text;
  }

  /** What reading a key file gave. */
  public sealed interface Reading {
    /** A key that may be used. */
    record Good(AccessKey key) implements Reading {}

    /** Item, value, limit and remedy. */
    record Refused(String message) implements Reading {}
  }

  /** Reads a key file: one line, rights so that only the owner, or owner and group, read it. */
  public static Reading read(Path file) {
    try {
      if (!Files.isRegularFile(file)) {
        return refused(
            file,
            Files.exists(file) ? "is no file" : "is not there",
            "make one with: feedwitness access-key %s".formatted(file));
      }
      Set<PosixFilePermission> rights = Files.getPosixFilePermissions(file);
      if (rights.stream().anyMatch(FORBIDDEN::contains)) {
        return refused(
            file,
            "has the rights %s and is open to others"
                .formatted(PosixFilePermissions.toString(rights)),
            "close it with: chmod 600 %s".formatted(file));
      }
      return read(file, line(file));
    } catch (NoSuchFileException e) {
      return refused(file, "is not there", "make one with: feedwitness access-key " + file);
    } catch (IOException e) {
      return refused(
          file,
          "cannot be read by this user (%s)".formatted(e.getClass().getSimpleName()),
          "let the user of the service own it");
    }
  }

  private static Reading read(Path file, String line) {
    String remedy = "make a good one with: feedwitness access-key %s.new".formatted(file);
    if (line.length() < SHORTEST || line.length() > LONGEST) {
      return refused(
          file,
          "holds a key of %d characters; %d to %d are needed"
              .formatted(line.length(), SHORTEST, LONGEST),
          remedy);
    }
    if (!line.chars().allMatch(c -> c > ' ' && c < 0x7f)) {
      return refused(file, "holds more than one line of plain characters", remedy);
    }
    if (line.chars().distinct().count() < FEWEST_DIFFERENT) {
      return refused(
          file,
          "holds a key of fewer than %d different characters".formatted(FEWEST_DIFFERENT),
          remedy);
    }
    return new Reading.Good(new AccessKey(line));
  }

  private static String line(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return new String(in.readNBytes(4 * LONGEST), StandardCharsets.UTF_8).strip();
    }
  }

  /**
   * Writes a new key that only the owner may read.
   *
   * @throws IOException in words for people, also if the file is there already
   */
  public static void make(Path file) throws IOException {
    try {
      Files.createFile(
          file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    } catch (FileAlreadyExistsException e) {
      throw new IOException(
          "%s is there already and is left as it is; name another file".formatted(file), e);
    } catch (NoSuchFileException e) {
      throw new IOException("%s has no folder to lie in; make the folder first".formatted(file), e);
    }
    Files.writeString(file, new Secrets().token() + "\n");
  }

  /** Whether it is this key. */
  boolean is(String guess) {
    return Secrets.same(text, guess);
  }

  /** What a command sends to prove that it knows the key. */
  public String authorization() {
    return Access.BEARER + text;
  }

  /** Not the key. */
  @Override
  public String toString() {
    return "access key of %d characters".formatted(text.length());
  }

  private static Reading.Refused refused(Path file, String what, String remedy) {
    return new Reading.Refused("access key: %s %s; %s".formatted(file, what, remedy));
  }
}
