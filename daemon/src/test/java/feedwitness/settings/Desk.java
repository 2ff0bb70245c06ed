package feedwitness.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;

/** A folder with a configuration in it, for tests. */
final class Desk {
  /** Four lines; a point's table that follows begins on line 5. */
  static final String NURSERY =
      """
      [nursery]
      name = "Quarry End Nursery"
      zone = "Europe/London"

      """;

  static final ZoneId ZONE = ZoneOffset.UTC;

  private final Path folder;

  Desk(Path folder) {
    this.folder = folder;
  }

  Path file(String name) {
    return folder.resolve(name);
  }

  void write(String name, String text) {
    try {
      Path file = file(name);
      Files.createDirectories(file.resolveSibling(""));
      Files.writeString(file, text);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  ConfigFiles files() {
    return ConfigFiles.beside(file("feedwitness.toml"), ZONE);
  }

  ConfigOutcome read() {
    return ConfigReader.read(files());
  }

  /** Reads a configuration that must be right. */
  ConfigOutcome.Read right(String text) {
    write("feedwitness.toml", text);
    return right(read());
  }

  static ConfigOutcome.Read right(ConfigOutcome outcome) {
    return assertInstanceOf(ConfigOutcome.Read.class, outcome, outcome::toString);
  }

  static List<Problem> wrong(ConfigOutcome outcome) {
    return assertInstanceOf(ConfigOutcome.Faulty.class, outcome).problems();
  }

  /** Asserts that there is one fault, at that place, whose text has all those words. */
  void fault(String text, String place, String... words) {
    write("feedwitness.toml", text);
    only(wrong(read()), "feedwitness.toml:" + place, words);
  }

  void only(List<Problem> problems, String place, String... words) {
    assertEquals(1, problems.size(), problems::toString);
    String said = problems.get(0).text();
    assertTrue(said.startsWith(folder + "/" + place + ": "), said);
    for (String word : words) {
      assertTrue(said.contains(word), () -> "'" + word + "' is not said in: " + said);
    }
  }
}
