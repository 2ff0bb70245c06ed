package feedwitness.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Whether somebody is watching. */
final class Terminal {
  private static final Path STANDARD_ERROR = Path.of("/proc/self/fd/2");

  private Terminal() {}

  /** Whether standard error is a terminal; System.console() says something else since Java 22. */
  static boolean watchesErrors() {
    try {
      String device = Files.readSymbolicLink(STANDARD_ERROR).toString();
      return device.startsWith("/dev/pts/") || device.startsWith("/dev/tty");
    } catch (IOException | UnsupportedOperationException e) {
      return false;
    }
  }
}
