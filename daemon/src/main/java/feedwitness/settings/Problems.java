package feedwitness.settings;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects what is wrong, so that all of it can be told at once. */
final class Problems {
  private final List<Problem> found = new ArrayList<>();

  void add(Problem problem) {
    found.add(problem);
  }

  void add(Path file, Spot spot, String key, String message, String remedy) {
    found.add(new Problem(file, spot.line(), spot.column(), key, message, remedy));
  }

  boolean none() {
    return found.isEmpty();
  }

  /** In order of place within each file; files in the order in which they were first at fault. */
  List<Problem> list() {
    List<Path> files = found.stream().map(Problem::file).distinct().toList();
    return found.stream()
        .distinct()
        .sorted(
            Comparator.<Problem>comparingInt(p -> files.indexOf(p.file()))
                .thenComparingInt(Problem::line)
                .thenComparingInt(Problem::column))
        .toList();
  }
}
