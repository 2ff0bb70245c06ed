package feedwitness.settings;

import java.nio.file.Path;

/**
 * One thing wrong with a configuration or a profile.
 *
 * @param file as it was named to us
 * @param line from 1; 1 where a file as a whole is at fault
 * @param column from 1, of the key (of the first odd character for text that is no TOML)
 * @param key the key at fault, for example {@code unit}; empty if no single key is
 * @param message item, value and limit
 * @param remedy what to do about it
 */
public record Problem(Path file, int line, int column, String key, String message, String remedy) {

  /** {@code file:line:column: message; remedy}, as editors understand it. */
  public String text() {
    return "%s:%d:%d: %s; %s".formatted(file, line, column, message, remedy);
  }

  @Override
  public String toString() {
    return text();
  }
}
