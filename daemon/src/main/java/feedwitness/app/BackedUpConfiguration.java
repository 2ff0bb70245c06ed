package feedwitness.app;

import feedwitness.settings.ConfigFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The files of a configuration that go into a backup, by the name they have there. Secrets are in
 * files of their own, which a configuration only names: those stay out.
 */
final class BackedUpConfiguration {
  private static final String PROFILES = "profiles/";
  private static final String TOML = ".toml";

  private BackedUpConfiguration() {}

  static SortedMap<String, Path> of(ConfigFiles files) throws IOException {
    SortedMap<String, Path> byName = new TreeMap<>();
    files.own().ifPresent(own -> addIfThere(byName, "", own));
    addIfThere(byName, "", files.generated());
    if (Files.isDirectory(files.profiles())) {
      try (Stream<Path> inside = Files.list(files.profiles())) {
        List<Path> profiles = inside.filter(file -> file.toString().endsWith(TOML)).toList();
        profiles.forEach(profile -> addIfThere(byName, PROFILES, profile));
      }
    }
    return byName;
  }

  private static void addIfThere(SortedMap<String, Path> byName, String folder, Path file) {
    if (Files.isRegularFile(file) && Files.isReadable(file)) {
      byName.put(folder + file.getFileName(), file);
    }
  }
}
