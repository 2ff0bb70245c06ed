package feedwitness.app.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Counts problems by kind and keeps the first few of each, so that a million broken rows make a
 * short message.
 */
public final class Tally {
  private static final int EXAMPLES = 3;
  private static final int LONGEST = 60;

  private final Map<String, Kind> kinds = new LinkedHashMap<>();

  private static final class Kind {
    private long count;
    private final List<String> examples = new ArrayList<>();
  }

  /** One more. {@code kind} is one of a few fixed texts; {@code shown} may be anything. */
  public void add(String kind, long line, String shown) {
    Kind known = kinds.computeIfAbsent(kind, unused -> new Kind());
    known.count++;
    if (known.examples.size() < EXAMPLES) {
      known.examples.add("line %d: '%s'".formatted(line, clip(shown)));
    }
  }

  /** How many of all kinds. */
  public long count() {
    return kinds.values().stream().mapToLong(kind -> kind.count).sum();
  }

  /** A few lines for people, empty if there are no problems. */
  public List<String> words() {
    List<String> words = new ArrayList<>();
    kinds.forEach(
        (name, kind) -> {
          words.add(kind.count == 1 ? "1 row: " + name : kind.count + " rows: " + name);
          kind.examples.forEach(example -> words.add("  " + example));
          if (kind.count > kind.examples.size()) {
            words.add("  and %d more".formatted(kind.count - kind.examples.size()));
          }
        });
    return words;
  }

  static String clip(String text) {
    String line = text.replaceAll("[\\p{Cntrl}\\p{Cs}\u2028\u2029]+", " ");
    return line.length() > LONGEST ? line.substring(0, LONGEST) + "…" : line;
  }
}
