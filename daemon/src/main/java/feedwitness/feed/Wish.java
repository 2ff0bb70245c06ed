package feedwitness.feed;

import java.util.Set;

/**
 * A nutrient wanted in the feed, water included.
 *
 * @param field of the form, for messages
 * @param symbol {@code N}, {@code P}, {@code nitrate-N}
 * @param counts what counts towards it
 * @param milligrams mg/L as element
 * @param priority 1 first, to 3
 * @param ceiling at most this, rather than as near as can be
 */
record Wish(
    String field,
    String symbol,
    Set<Nutrient> counts,
    double milligrams,
    int priority,
    boolean ceiling) {
  Wish {
    counts = Set.copyOf(counts);
  }

  double in(Nutrients nutrients) {
    return counts.stream().mapToDouble(nutrients::of).sum();
  }
}
