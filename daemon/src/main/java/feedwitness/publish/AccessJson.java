package feedwitness.publish;

import com.fasterxml.jackson.annotation.JsonProperty;
import feedwitness.publish.access.Caller;
import feedwitness.publish.access.Device;
import feedwitness.publish.access.Devices;
import feedwitness.publish.access.QrPicture;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Who may use the page, as written outside. */
final class AccessJson {
  private AccessJson() {}

  /**
   * Who asks.
   *
   * @param open whether others can be let in at all
   * @param address where phones find the page; null if nowhere
   */
  record Self(String by, String name, String role, boolean open, @Nullable String address) {
    static Self of(Caller caller, boolean open, @Nullable String address) {
      return new Self(Codes.of(caller.kind()), caller.name(), caller.role().code(), open, address);
    }
  }

  /** A code to be typed. */
  record Code(
      String code,
      String role,
      @JsonProperty("valid_s") long valid,
      @Nullable String address,
      @Nullable String link,
      @Nullable Picture qr) {}

  /** The link as a drawing: one path in a square of {@code size} units. */
  record Picture(int size, String path) {
    static Picture of(String link) {
      QrPicture picture = new QrPicture(link);
      return new Picture(picture.size(), picture.path());
    }
  }

  /** Let in. */
  record Paired(String id, String name, String role) {
    static Paired of(Device device) {
      return new Paired(device.id(), device.name(), device.role().code());
    }
  }

  /** All that are paired. */
  record Paireds(List<Entry> devices) {
    Paireds {
      devices = List.copyOf(devices);
    }

    static Paireds of(Devices devices, Caller asking) {
      return new Paireds(
          devices.all().stream().map(each -> Entry.of(each, devices, asking)).toList());
    }
  }

  /** A paired device; of its token nothing is told. */
  record Entry(
      String id,
      String name,
      String role,
      @JsonProperty("paired_at") @Nullable String pairedAt,
      @JsonProperty("paired_by") String pairedBy,
      @JsonProperty("last_seen") @Nullable String lastSeen,
      boolean self) {
    static Entry of(Device device, Devices devices, Caller asking) {
      return new Entry(
          device.id(),
          device.name(),
          device.role().code(),
          device.pairedAt().map(Numbers::time).orElse(null),
          device.pairedBy(),
          devices.lastSeen(device).map(Numbers::time).orElse(null),
          device.id().equals(asking.device()));
    }
  }
}
