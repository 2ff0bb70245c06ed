package feedwitness.wire;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;

/** What a person must do to be let in. */
final class PortAccess {
  private PortAccess() {}

  /** In words, for a device this process may not open. */
  static String remedy(Path device) {
    String group = "dialout";
    try {
      group = Files.readAttributes(device, PosixFileAttributes.class).group().getName();
    } catch (IOException | UnsupportedOperationException e) {
      // The usual group is the best advice left.
    }
    return "add the user to group %s (usermod -aG %s USER) and start again".formatted(group, group);
  }
}
