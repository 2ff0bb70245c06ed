package feedwitness.publish;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;

/** Files that came with the program. */
final class ClasspathFiles {
  private ClasspathFiles() {}

  /** The content of a file; empty if there is none. */
  static Optional<byte[]> read(String path) throws IOException {
    try (InputStream file = ClasspathFiles.class.getClassLoader().getResourceAsStream(path)) {
      return file == null ? Optional.empty() : Optional.of(file.readAllBytes());
    }
  }
}
