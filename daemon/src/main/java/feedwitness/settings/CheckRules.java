package feedwitness.settings;

import feedwitness.calibration.StandardShelf;
import feedwitness.quantity.PointName;
import java.util.Map;

/**
 * How probes are to be checked, and with what.
 *
 * @param usual of points that say nothing
 * @param points that say otherwise
 */
public record CheckRules(StandardShelf shelf, CheckRule usual, Map<PointName, CheckRule> points) {
  /** Nothing on the shelf, the usual rule. */
  public static final CheckRules USUAL =
      new CheckRules(StandardShelf.EMPTY, CheckRule.USUAL, Map.of());

  public CheckRules {
    points = Map.copyOf(points);
  }

  /** Of a point. */
  public CheckRule of(PointName point) {
    return points.getOrDefault(point, usual);
  }
}
