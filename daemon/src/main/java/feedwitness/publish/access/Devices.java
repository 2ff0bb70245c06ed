package feedwitness.publish.access;

import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.ledger.EvidenceHistory;
import java.text.Normalizer;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;

/** The devices that are paired now, read from the records at the start. */
public final class Devices {
  /** At most so many are paired at a time. */
  public static final int MOST = 64;

  /** A name has at most so many characters. */
  public static final int LONGEST_NAME = 40;

  private static final long PATIENCE_SECONDS = 15;

  /** Names of those who are no devices: none may pass for them in a record. */
  private static final Set<String> TAKEN =
      Set.of(Caller.DESK.name(), Caller.COMMAND_LINE.name(), "feedwitness");

  private final RecordBook book;
  private final Secrets secrets;
  private final Map<String, Device> devices;
  private final Map<String, Instant> seen = new ConcurrentHashMap<>();

  /** Whose record is on its way to the disk: their names are taken already. */
  private final Map<String, Device> arriving = new LinkedHashMap<>();

  private Devices(RecordBook book, Secrets secrets, Map<String, Device> devices) {
    this.book = book;
    this.secrets = secrets;
    this.devices = devices;
  }

  /** As the records say. */
  public static Devices load(EvidenceHistory history, RecordBook book) {
    return new Devices(book, new Secrets(), DeviceRecords.read(history));
  }

  /** What came of pairing. */
  sealed interface Pairing {
    /** {@code token} is shown this once and kept nowhere. */
    record Done(Device device, String token) implements Pairing {}

    /** {@code field} is at fault; empty if none. */
    record Refused(String field, String message) implements Pairing {}
  }

  /** What came of revoking. */
  public enum Revocation {
    /** The device is out, and stays out. */
    DONE,
    /** There is no such device. */
    UNKNOWN,
    /** The device is out, but the record of it is not safe on disk: after a restart it is back. */
    UNRECORDED
  }

  /** All that are paired, oldest first. */
  public synchronized List<Device> all() {
    return List.copyOf(devices.values());
  }

  /** When a device last asked for anything since the service started. */
  public Optional<Instant> lastSeen(Device device) {
    return Optional.ofNullable(seen.get(device.id()));
  }

  /** Whether a device is still let in. */
  public synchronized boolean isPaired(String id) {
    return devices.containsKey(id);
  }

  synchronized Optional<Device> byToken(String token) {
    String hash = Secrets.sha256(token);
    return devices.values().stream()
        .filter(device -> Secrets.same(device.tokenHash(), hash))
        .findFirst();
  }

  void saw(Device device, Instant now) {
    seen.put(device.id(), now);
  }

  /** The name as it would be kept, or what is wrong with it. */
  synchronized Optional<Pairing.Refused> faultOf(String name) {
    if (name.isBlank() || name.length() > LONGEST_NAME) {
      return refused(
          "name",
          "name has %d characters; give the device a name of 1 to %d, such as Barrel phone"
              .formatted(name.length(), LONGEST_NAME));
    }
    if (!name.codePoints().allMatch(Devices::visible)) {
      return refused("name", "name holds characters that cannot be seen; type it anew");
    }
    if (TAKEN.contains(folded(name))
        || Stream.concat(devices.values().stream(), arriving.values().stream())
            .anyMatch(each -> folded(each.name()).equals(folded(name)))) {
      return refused(
          "name",
          "name '%s' is taken; choose another, so that records tell the two apart".formatted(name));
    }
    return devices.size() + arriving.size() >= MOST
        ? refused("", "%d devices are paired, which is the limit; revoke one first".formatted(MOST))
        : Optional.empty();
  }

  static String tidy(String name) {
    return Normalizer.normalize(name, Normalizer.Form.NFC).strip().replaceAll(" {2,}", " ");
  }

  /** Lets a device in once the record of it is safe on disk. */
  Pairing pair(String name, Role role, String by) {
    String token = secrets.token();
    Device wanted =
        new Device(secrets.id(), name, role, Optional.empty(), by, Secrets.sha256(token));
    synchronized (this) {
      Optional<Pairing.Refused> fault = faultOf(name);
      if (fault.isPresent()) {
        return fault.get();
      }
      arriving.put(wanted.id(), wanted);
    }
    Optional<Evidence> kept = record(DeviceRecords.paired(wanted));
    synchronized (this) {
      arriving.remove(wanted.id());
      if (kept.isEmpty()) {
        return new Pairing.Refused(
            "",
            "the pairing cannot be put on record now; look at the first line of the page at the desk, then pair again");
      }
      Device device = wanted.paired(DeviceRecords.time(kept.get()));
      devices.put(device.id(), device);
      return new Pairing.Done(device, token);
    }
  }

  /** Shuts a device out at once, then puts that on record. */
  public Revocation revoke(String id, String by) {
    Device device;
    synchronized (this) {
      device = devices.remove(id);
    }
    if (device == null) {
      return Revocation.UNKNOWN;
    }
    seen.remove(id);
    return record(DeviceRecords.revoked(device, by)).isPresent()
        ? Revocation.DONE
        : Revocation.UNRECORDED;
  }

  /** By identifier or name. */
  public synchronized Optional<Device> find(String idOrName) {
    List<Device> found = new ArrayList<>(devices.values());
    found.removeIf(
        each -> !each.id().equals(idOrName) && !folded(each.name()).equals(folded(idOrName)));
    return found.stream().findFirst();
  }

  private Optional<Evidence> record(EvidenceDraft draft) {
    try {
      return Optional.of(book.put(draft).get(PATIENCE_SECONDS, TimeUnit.SECONDS));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    } catch (ExecutionException | TimeoutException e) {
      return Optional.empty();
    }
  }

  private static boolean visible(int codePoint) {
    int kind = Character.getType(codePoint);
    return kind != Character.CONTROL
        && kind != Character.FORMAT
        && kind != Character.SURROGATE
        && kind != Character.UNASSIGNED
        && kind != Character.LINE_SEPARATOR
        && kind != Character.PARAGRAPH_SEPARATOR;
  }

  private static String folded(String name) {
    return tidy(name).toLowerCase(Locale.ROOT);
  }

  private static Optional<Pairing.Refused> refused(String field, String message) {
    return Optional.of(new Pairing.Refused(field, message));
  }
}
