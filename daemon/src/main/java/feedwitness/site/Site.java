package feedwitness.site;

import feedwitness.quantity.PointName;
import java.time.ZoneId;
import java.util.List;

/** The whole place. Names of points are unique, and so are names of feed lines. */
public record Site(
    String name, ZoneId zone, List<MeasuringPoint> points, List<FeedLine> feedLines) {
  public Site {
    points = List.copyOf(points);
    feedLines = List.copyOf(feedLines);
    if (points.stream().map(MeasuringPoint::name).distinct().count() != points.size()) {
      throw new IllegalArgumentException("two measuring points share a name");
    }
    if (feedLines.stream().map(FeedLine::name).distinct().count() != feedLines.size()) {
      throw new IllegalArgumentException("two feed lines share a name");
    }
  }

  /** A place without feed lines. */
  public Site(String name, ZoneId zone, List<MeasuringPoint> points) {
    this(name, zone, points, List.of());
  }

  /** Whether a point of this name is there. */
  public boolean has(PointName point) {
    return points.stream().anyMatch(p -> p.name().equals(point));
  }
}
