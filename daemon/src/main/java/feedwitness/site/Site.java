package feedwitness.site;

import feedwitness.quantity.PointName;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * The whole place. Names of points are unique, and so are names of strengths.
 *
 * @param strengths what is fed here
 * @param rules alarms that are to be otherwise than usual; a later one counts before an earlier
 */
public record Site(
    String name,
    ZoneId zone,
    List<MeasuringPoint> points,
    List<Strength> strengths,
    List<AlarmRule> rules) {
  public Site {
    points = List.copyOf(points);
    strengths = List.copyOf(strengths);
    rules = List.copyOf(rules);
    if (points.stream().map(MeasuringPoint::name).distinct().count() != points.size()) {
      throw new IllegalArgumentException("two measuring points share a name");
    }
    if (strengths.stream().map(Strength::name).distinct().count() != strengths.size()) {
      throw new IllegalArgumentException("two strengths share a name");
    }
  }

  /** With neither strengths nor rules. */
  public Site(String name, ZoneId zone, List<MeasuringPoint> points) {
    this(name, zone, points, List.of(), List.of());
  }

  /** The point of this name. */
  public Optional<MeasuringPoint> point(PointName wanted) {
    return points.stream().filter(point -> point.name().equals(wanted)).findFirst();
  }

  /**
   * The point that measures the water before feed is added at {@code point}: the one it names, or
   * the only one of the place; empty if there is none or no telling which.
   */
  public Optional<PointName> sourceOf(MeasuringPoint point) {
    if (point.limits().source().isPresent()) {
      return point.limits().source();
    }
    List<PointName> sources =
        points.stream()
            .filter(each -> each.place() == MeasuringPoint.Place.SOURCE)
            .map(MeasuringPoint::name)
            .filter(name -> !name.equals(point.name()))
            .toList();
    return sources.size() == 1 ? Optional.of(sources.get(0)) : Optional.empty();
  }
}
