package feedwitness.site;

import java.time.ZoneId;
import java.util.List;

/** The whole place. Names of points are unique. */
public record Site(String name, ZoneId zone, List<MeasuringPoint> points) {
  public Site {
    points = List.copyOf(points);
    if (points.stream().map(MeasuringPoint::name).distinct().count() != points.size()) {
      throw new IllegalArgumentException("two measuring points share a name");
    }
  }
}
