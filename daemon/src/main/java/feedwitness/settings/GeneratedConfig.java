package feedwitness.settings;

import feedwitness.quantity.PointName;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The file in which the page keeps the points set up there, beside the user's own, which is never
 * written to. Not for several threads at once.
 */
public final class GeneratedConfig {
  private static final String HEADER =
      """
      # Written by Feedwitness: measuring points that were set up on its page.
      # It is written anew each time a point is set up; comments and layout are lost then.
      # To keep a point by hand, move its [[point]] table to a configuration of your own
      # (docs/configuration.md) and remove it here.
      """;

  private GeneratedConfig() {}

  /**
   * Adds a point, or replaces the one of its name in the generated file, if the whole configuration
   * is right with it; otherwise nothing is written. The new file takes the old one's place in one
   * step, so that a power cut leaves one or the other.
   *
   * @return what the configuration is now, or why it was not changed
   */
  public static ConfigOutcome save(ConfigFiles files, GeneratedPoint point) {
    Problems problems = new Problems();
    Map<String, Map<String, Object>> points = existing(files.generated(), problems);
    if (!problems.none()) {
      return new ConfigOutcome.Faulty(problems.list());
    }
    points.put(point.name().text(), point.entries());
    return exchange(files, text(List.copyOf(points.values())));
  }

  /**
   * Removes a point from the generated file; a point that is not there is no fault.
   *
   * @return what the configuration is now, or why it was not changed
   */
  public static ConfigOutcome remove(ConfigFiles files, PointName name) {
    Problems problems = new Problems();
    Map<String, Map<String, Object>> points = existing(files.generated(), problems);
    if (!problems.none()) {
      return new ConfigOutcome.Faulty(problems.list());
    }
    return points.remove(name.text()) == null
        ? ConfigReader.read(files)
        : exchange(files, text(List.copyOf(points.values())));
  }

  private static ConfigOutcome exchange(ConfigFiles files, String text) {
    ConfigOutcome outcome = ConfigReader.read(files, Optional.of(text));
    if (outcome instanceof ConfigOutcome.Faulty) {
      return outcome;
    }
    try {
      write(files.generated().toAbsolutePath(), text);
      return outcome;
    } catch (IOException e) {
      return new ConfigOutcome.Faulty(
          List.of(
              new Problem(
                  files.generated(),
                  1,
                  1,
                  "",
                  "cannot be written: " + TomlFile.reason(e),
                  "let the user the service runs as write to its folder")));
    }
  }

  /** Points of the file by name, as they stand there. */
  private static Map<String, Map<String, Object>> existing(Path file, Problems problems) {
    Map<String, Map<String, Object>> points = new LinkedHashMap<>();
    if (!Files.exists(file)) {
      return points;
    }
    TomlFile.read(file, ConfigReader.GENERATED_KEYS, problems).stream()
        .flatMap(root -> root.tables("point", PointReader.KEYS).stream())
        .forEach(section -> keep(section, points));
    return points;
  }

  private static void keep(Section section, Map<String, Map<String, Object>> points) {
    section.missing("name", "give the point a short name, or remove its table");
    Optional<String> name = section.text("name");
    if (name.isPresent() && points.putIfAbsent(name.get(), section.entries()) != null) {
      section.problem("name", "another point has this name", "remove one of the two");
    }
    section
        .entries()
        .forEach(
            (key, value) -> {
              if (!(value instanceof String
                  || value instanceof Number
                  || value instanceof Boolean)) {
                section.problem(
                    key,
                    "%s is %s".formatted(key, Values.kind(value)),
                    "write text, a number, or true or false");
              }
            });
  }

  private static String text(List<Map<String, Object>> points) {
    StringBuilder text = new StringBuilder(HEADER);
    for (Map<String, Object> point : points) {
      text.append("\n[[point]]\n");
      point.forEach((key, value) -> text.append(key + " = " + toml(value) + "\n"));
    }
    return text.toString();
  }

  private static String toml(Object value) {
    return value instanceof String text ? quoted(text) : value.toString();
  }

  private static String quoted(String text) {
    StringBuilder quoted = new StringBuilder("\"");
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"' || c == '\\') {
        quoted.append('\\').append(c);
      } else if (Character.isISOControl(c)) {
        quoted.append("\\u%04x".formatted((int) c));
      } else {
        quoted.append(c);
      }
    }
    return quoted.append('"').toString();
  }

  private static void write(Path file, String text) throws IOException {
    Path folder = file.resolveSibling("");
    Files.createDirectories(folder);
    Path fresh = file.resolveSibling(file.getFileName() + ".new");
    try (FileChannel channel =
        FileChannel.open(
            fresh,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.WRITE)) {
      ByteBuffer octets = StandardCharsets.UTF_8.encode(text);
      while (octets.hasRemaining()) {
        channel.write(octets);
      }
      channel.force(true);
    }
    Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    try (FileChannel directory = FileChannel.open(folder, StandardOpenOption.READ)) {
      directory.force(true);
    }
  }
}
