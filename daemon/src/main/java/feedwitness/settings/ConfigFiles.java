package feedwitness.settings;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Optional;

/**
 * Where a configuration is read from.
 *
 * @param own the user's file, never written to; empty if there is none
 * @param generated points set up on the page; need not exist
 * @param profiles folder of the user's own device profiles; need not exist
 * @param store where measurements go unless the user's file says otherwise; absolute
 * @param zone time zone unless the user's file says otherwise
 */
public record ConfigFiles(
    Optional<Path> own, Path generated, Path profiles, Path store, ZoneId zone) {
  /** Name of the file written by the page. */
  public static final String GENERATED = "feedwitness.generated.toml";

  static final String PROFILES = "profiles";
  static final String STORE = "feedwitness-data";

  /** Everything beside the user's file. */
  public static ConfigFiles beside(Path own, ZoneId systemZone) {
    Path folder = own.resolveSibling("");
    return new ConfigFiles(
        Optional.of(own),
        folder.resolve(GENERATED),
        folder.resolve(PROFILES),
        own.toAbsolutePath().resolveSibling(STORE).normalize(),
        systemZone);
  }

  /** No file of the user's: all is kept in the data directory. */
  public static ConfigFiles without(Path dataDirectory, ZoneId systemZone) {
    return new ConfigFiles(
        Optional.empty(),
        dataDirectory.resolve(GENERATED),
        dataDirectory.resolve(PROFILES),
        dataDirectory.toAbsolutePath().normalize(),
        systemZone);
  }
}
