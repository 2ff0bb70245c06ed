package feedwitness.app;

import feedwitness.acquire.PortPlan;
import feedwitness.acquire.ProbePlan;
import feedwitness.profile.DeviceProfile;
import feedwitness.quantity.LinkAddress;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.ProbeMount;
import feedwitness.site.Site;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Which wires a site needs. */
final class PortPlans {
  /** An instrument that is speeded up is asked no more often than so … */
  private static final Duration SHORTEST_INTERVAL = Duration.ofMillis(20);

  /** … unless it would then be read more rarely than so, in its own time. */
  private static final Duration RAREST = Duration.ofSeconds(5);

  private PortPlans() {}

  /**
   * One plan a link.
   *
   * @param pace how many times faster than real the instruments run; 1 but for a demo
   */
  static List<PortPlan> of(Site site, double pace) {
    Map<LinkAddress, List<ProbePlan>> byLink = new LinkedHashMap<>();
    for (MeasuringPoint point : site.points()) {
      if (point.probe().isPresent()) {
        ProbeMount mount = point.probe().get();
        byLink
            .computeIfAbsent(mount.link(), link -> new ArrayList<>())
            .add(new ProbePlan(point.name(), paced(mount.profile(), pace), mount.unit()));
      }
    }
    return byLink.entrySet().stream()
        .map(
            entry ->
                new PortPlan(
                    entry.getKey(), entry.getValue().get(0).profile().serial(), entry.getValue()))
        .toList();
  }

  private static DeviceProfile paced(DeviceProfile profile, double pace) {
    if (pace == 1) {
      return profile;
    }
    Duration interval = shorter(profile.interval(), pace);
    Duration rarest = shorter(RAREST, pace);
    Duration shortest = rarest.compareTo(SHORTEST_INTERVAL) < 0 ? rarest : SHORTEST_INTERVAL;
    return new DeviceProfile(
        profile.name(),
        profile.title(),
        profile.serial(),
        profile.protocol(),
        profile.fields(),
        profile.instrument(),
        interval.compareTo(shortest) < 0 ? shortest : interval,
        profile.longestReply());
  }

  private static Duration shorter(Duration interval, double pace) {
    return Duration.ofNanos((long) (interval.toNanos() / pace));
  }
}
