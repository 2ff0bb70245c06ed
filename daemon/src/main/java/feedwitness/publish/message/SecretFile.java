package feedwitness.publish.message;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.EnumSet;
import java.util.Set;

/** A file with a password or key, read anew each time so that changing it needs no restart. */
final class SecretFile {
  private static final int LONGEST = 4096;

  /** Whoever may write it could put in a secret of their own. */
  private static final Set<PosixFilePermission> TOO_OPEN =
      Set.copyOf(
          EnumSet.of(
              PosixFilePermission.GROUP_WRITE,
              PosixFilePermission.OTHERS_READ,
              PosixFilePermission.OTHERS_WRITE));

  private SecretFile() {}

  /**
   * The secret, without the end of its line.
   *
   * @param least fewer characters are refused
   * @throws IOException saying what is wrong with the file, never what is in it
   */
  static String read(Path file, int least) throws IOException {
    String text;
    try {
      Set<PosixFilePermission> rights = EnumSet.copyOf(owner(Files.getPosixFilePermissions(file)));
      rights.retainAll(TOO_OPEN);
      if (!rights.isEmpty()) {
        throw new IOException("%s is open to others; close it: chmod 600 %s".formatted(file, file));
      }
      try (InputStream in = Files.newInputStream(file)) {
        text = new String(in.readNBytes(LONGEST + 1), StandardCharsets.UTF_8);
      }
    } catch (NoSuchFileException e) {
      throw new IOException("%s is not there; write the secret into it".formatted(file), e);
    } catch (AccessDeniedException e) {
      throw new IOException(
          "this service may not read %s; give it to the user it runs as".formatted(file), e);
    }
    String secret = text.strip();
    if (secret.length() < least || text.length() > LONGEST || !oneLine(secret)) {
      throw new IOException(
          "%s holds no single line of %d to %d characters".formatted(file, least, LONGEST));
    }
    return secret;
  }

  /** An empty set has no element type to copy. */
  private static Set<PosixFilePermission> owner(Set<PosixFilePermission> rights) {
    Set<PosixFilePermission> all = EnumSet.of(PosixFilePermission.OWNER_READ);
    all.addAll(rights);
    return all;
  }

  private static boolean oneLine(String secret) {
    return secret.chars().noneMatch(Character::isISOControl);
  }
}
