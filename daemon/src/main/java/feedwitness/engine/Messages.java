package feedwitness.engine;

import feedwitness.quantity.Octets;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.sample.Sample;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.Site;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The octets of the last samples of each point, so that a number can be followed back to the wire.
 * In memory only. When a point has {@link #REMEMBERED}, its oldest is forgotten.
 */
public final class Messages {
  /** Five minutes of a probe at 1 Hz, about 50 kB. */
  public static final int REMEMBERED = 300;

  private final Map<PointName, Deque<Heard>> byPoint = new HashMap<>();

  private record Heard(Stamp stamp, List<Octets> octets) {}

  Messages() {}

  synchronized void remember(Sample sample, List<Octets> octets) {
    if (octets.isEmpty()) {
      return;
    }
    Deque<Heard> heard = byPoint.computeIfAbsent(sample.point(), point -> new ArrayDeque<>());
    if (heard.size() == REMEMBERED) {
      heard.removeFirst();
    }
    heard.addLast(new Heard(sample.stamp(), List.copyOf(octets)));
  }

  synchronized void forgetAllBut(Site site) {
    Set<PointName> there =
        site.points().stream().map(MeasuringPoint::name).collect(Collectors.toSet());
    byPoint.keySet().retainAll(there);
  }

  synchronized List<Octets> of(PointName point, Stamp stamp) {
    for (Heard heard : byPoint.getOrDefault(point, new ArrayDeque<>())) {
      if (heard.stamp().compareTo(stamp) == 0) {
        return heard.octets();
      }
    }
    return List.of();
  }
}
