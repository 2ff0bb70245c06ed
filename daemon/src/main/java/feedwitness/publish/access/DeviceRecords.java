package feedwitness.publish.access;

import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceQuery;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Devices as they stand on record: kind {@code device}, the subject is the device, and field {@code
 * event} says what happened to it. A device is what its records say, in their order.
 */
final class DeviceRecords {
  static final String KIND = "device";
  private static final String PAIRED = "paired";
  private static final String REVOKED = "revoked";
  private static final int PAGE = 1_000;

  private DeviceRecords() {}

  static EvidenceDraft paired(Device device) {
    return EvidenceDraft.of(
            KIND,
            device.id(),
            Map.of(
                "event",
                PAIRED,
                "name",
                device.name(),
                "role",
                device.role().code(),
                "token-sha256",
                device.tokenHash()))
        .by(device.pairedBy());
  }

  static EvidenceDraft revoked(Device device, String by) {
    return EvidenceDraft.of(KIND, device.id(), Map.of("event", REVOKED, "name", device.name()))
        .by(by);
  }

  /** When something was recorded; empty if the clock was not to be believed. */
  static Optional<Instant> time(Evidence record) {
    return record.at().dated() ? Optional.of(record.at().wall()) : Optional.empty();
  }

  /** All that are paired and not revoked, oldest first. */
  static Map<String, Device> read(EvidenceHistory history) {
    Map<String, Device> devices = new LinkedHashMap<>();
    long last = 0;
    List<Evidence> page = history.evidence(EvidenceQuery.after(last, PAGE, KIND));
    while (!page.isEmpty()) {
      page.forEach(record -> follow(record, devices));
      last = page.get(page.size() - 1).id();
      page = history.evidence(EvidenceQuery.after(last, PAGE, KIND));
    }
    return devices;
  }

  private static void follow(Evidence record, Map<String, Device> devices) {
    if (record.field("event").equals(PAIRED)) {
      devices.put(
          record.subject(),
          new Device(
              record.subject(),
              record.field("name"),
              Role.of(record.field("role")).orElse(Role.SEE),
              time(record),
              record.author(),
              record.field("token-sha256")));
    } else {
      devices.remove(record.subject());
    }
  }
}
