package feedwitness.settings;

import java.nio.file.Path;
import java.util.Set;

/**
 * One TOML file being read. Where a line is no TOML, what it was to say is unknown: nothing more is
 * claimed of that line, nor that a key is missing that may have stood there.
 */
record Source(Path file, Set<Integer> brokenLines, Problems problems) {
  Source {
    brokenLines = Set.copyOf(brokenLines);
  }

  void add(Spot spot, String key, String message, String remedy) {
    if (!brokenLines.contains(spot.line())) {
      problems.add(file, spot, key, message, remedy);
    }
  }

  /** Whether every line could be read, so that what was not found is not there. */
  boolean whole() {
    return brokenLines.isEmpty();
  }
}
