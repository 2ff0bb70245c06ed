package feedwitness.store;

import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.tinylog.Logger;

/** Damage that was met while reading, each told once. */
final class Findings implements Consumer<String> {
  /** What is beyond is in the log. */
  private static final int MAX_REMEMBERED = 1_000;

  private final Set<String> found = new LinkedHashSet<>();

  @Override
  public synchronized void accept(String words) {
    if (found.size() < MAX_REMEMBERED && found.add(words)) {
      Logger.error(words);
    }
  }

  /** The first of them, and how many more. */
  synchronized Optional<String> first() {
    return found.stream()
        .findFirst()
        .map(
            words ->
                found.size() == 1 ? words : words + " (and %d more)".formatted(found.size() - 1));
  }
}
