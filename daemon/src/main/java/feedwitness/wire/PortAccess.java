package feedwitness.wire;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;

/** What a person must do to be let in. */
final class PortAccess {
  private static final String USUAL_GROUP = "dialout";

  private PortAccess() {}

  /** In words, for a device this process may not open. */
  static String remedy(Path device) {
    try {
      PosixFileAttributes attributes = Files.readAttributes(device, PosixFileAttributes.class);
      String group = attributes.group().getName();
      boolean shared = attributes.permissions().contains(PosixFilePermission.GROUP_WRITE);
      if (!shared || group.equals("root")) {
        return "it belongs to %s alone; have the administrator give it to group %s"
            .formatted(attributes.owner().getName(), USUAL_GROUP);
      }
      return join(group);
    } catch (IOException | UnsupportedOperationException e) {
      return join(USUAL_GROUP); // the usual group is the best advice left
    }
  }

  private static String join(String group) {
    return "add the user to group %s (usermod -aG %s USER) and start again".formatted(group, group);
  }
}
