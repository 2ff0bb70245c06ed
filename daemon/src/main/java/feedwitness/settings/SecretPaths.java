package feedwitness.settings;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Paths of files with secrets or certificates. What is in them is never read here, so that it can't
 * get into a message.
 */
final class SecretPaths {
  private SecretPaths() {}

  /** A file that only the service should be able to read; absolute. */
  static Optional<String> secret(Section section, String key, List<String> notes) {
    Optional<Path> path = path(section, key);
    path.flatMap(SecretPaths::amiss).ifPresent(why -> notes.add(note(section, key, why)));
    return path.map(Path::toString);
  }

  /** Empty if it is faulty; within, empty if it is not given. */
  static Optional<Optional<String>> optional(Section section, String key) {
    if (!section.has(key)) {
      return Optional.of(Optional.empty());
    }
    Optional<Path> path = path(section, key);
    return path.isEmpty() ? Optional.empty() : Optional.of(path.map(Path::toString));
  }

  private static Optional<Path> path(Section section, String key) {
    return section.parsed(
        key,
        text -> {
          if (text.startsWith("~")) {
            throw new IllegalArgumentException(
                "'%s' begins with ~, which only a shell understands".formatted(text));
          }
          try {
            return section.source().file().toAbsolutePath().resolveSibling(text).normalize();
          } catch (InvalidPathException e) {
            throw new IllegalArgumentException("'%s' cannot be a path".formatted(text), e);
          }
        },
        "write the whole path, or a name beside the configuration");
  }

  private static Optional<String> amiss(Path file) {
    try {
      Set<PosixFilePermission> rights = Files.getPosixFilePermissions(file);
      boolean open =
          rights.contains(PosixFilePermission.OTHERS_READ)
              || rights.contains(PosixFilePermission.OTHERS_WRITE)
              || rights.contains(PosixFilePermission.GROUP_WRITE);
      return open
          ? Optional.of("%s is open to others; close it: chmod 600 %s".formatted(file, file))
          : Optional.empty();
    } catch (NoSuchFileException e) {
      return Optional.of("%s is not there yet; write the secret into it".formatted(file));
    } catch (IOException | UnsupportedOperationException e) {
      return Optional.of("the rights of %s can't be looked up: %s".formatted(file, e.getMessage()));
    }
  }

  private static String note(Section section, String key, String why) {
    Spot spot = section.spot(key);
    return "%s:%d:%d: %s %s; until then no message is sent this way"
        .formatted(section.source().file(), spot.line(), spot.column(), key, why);
  }
}
