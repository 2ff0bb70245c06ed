package feedwitness.ledger;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;

/**
 * Which records to give.
 *
 * @param kinds any of these; any at all if empty
 * @param subject exactly this
 * @param from at or after this time; what is undated lies at no time
 * @param to before this time
 * @param afterId only ids above
 * @param beforeId only ids below
 * @param limit at most so many, 1 to {@link #MOST}
 */
public record EvidenceQuery(
    Set<String> kinds,
    Optional<String> subject,
    Optional<Instant> from,
    Optional<Instant> to,
    long afterId,
    long beforeId,
    Order order,
    int limit) {
  /** More are asked for page by page. */
  public static final int MOST = 10_000;

  /** By id. */
  public enum Order {
    OLDEST_FIRST,
    NEWEST_FIRST
  }

  public EvidenceQuery {
    kinds = Set.copyOf(kinds);
    if (limit < 1 || limit > MOST) {
      throw new IllegalArgumentException("limit %d is outside 1 to %d".formatted(limit, MOST));
    }
  }

  /** The newest of some kinds. */
  public static EvidenceQuery newest(int limit, String... kinds) {
    return new EvidenceQuery(
        Set.of(kinds),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        0,
        Long.MAX_VALUE,
        Order.NEWEST_FIRST,
        limit);
  }

  /** In the order they were recorded, from after an id. */
  public static EvidenceQuery after(long id, int limit, String... kinds) {
    return new EvidenceQuery(
        Set.of(kinds),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        id,
        Long.MAX_VALUE,
        Order.OLDEST_FIRST,
        limit);
  }

  /** The same about one subject only. */
  public EvidenceQuery about(String only) {
    return new EvidenceQuery(kinds, Optional.of(only), from, to, afterId, beforeId, order, limit);
  }

  /** The same within {@code start} ≤ time < {@code end}. */
  public EvidenceQuery within(Instant start, Instant end) {
    return new EvidenceQuery(
        kinds, subject, Optional.of(start), Optional.of(end), afterId, beforeId, order, limit);
  }

  /** The same below an id: the next page of the newest. */
  public EvidenceQuery before(long id) {
    return new EvidenceQuery(kinds, subject, from, to, afterId, id, order, limit);
  }
}
