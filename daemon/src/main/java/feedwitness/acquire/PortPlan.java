package feedwitness.acquire;

import feedwitness.profile.Protocol;
import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.SerialSettings;
import java.util.List;

/**
 * One wire and the probes on it: several Modbus units, or one instrument that sends lines.
 *
 * @param serial settings of the line, shared by all probes
 */
public record PortPlan(LinkAddress link, SerialSettings serial, List<ProbePlan> probes) {
  public PortPlan {
    probes = List.copyOf(probes);
    if (probes.isEmpty()) {
      throw new IllegalArgumentException("no probe on " + link.text());
    }
    boolean lines =
        probes.stream().anyMatch(probe -> probe.profile().protocol() instanceof Protocol.Line);
    if (lines && probes.size() > 1) {
      throw new IllegalArgumentException(
          "%s carries a line protocol and has room for one probe, not %d"
              .formatted(link.text(), probes.size()));
    }
  }
}
