package feedwitness.store;

import feedwitness.quantity.PointName;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What a history file was found to hold when all of it was read.
 *
 * @param samples readings and missing ones
 * @param undated how many of them have no date yet
 * @param first earliest dated sample
 * @param last latest dated sample
 * @param damaged pieces that cannot be read
 * @param damage the first of them, in words
 */
public record Inventory(
    List<PointName> points,
    long samples,
    long undated,
    Optional<Instant> first,
    Optional<Instant> last,
    long damaged,
    List<String> damage) {
  public Inventory {
    points = List.copyOf(points);
    damage = List.copyOf(damage);
  }
}
