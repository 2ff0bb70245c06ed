package feedwitness.wire;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The serial ports of this machine. */
public final class PortCatalog {
  /** Where Linux keeps names that survive replugging. */
  public static final Path BY_ID = Path.of("/dev/serial/by-id");

  private final Path byId;

  /** Looks for stable names in {@code byId}. */
  public PortCatalog(Path byId) {
    this.byId = byId;
  }

  /**
   * A serial port.
   *
   * @param device for example {@code /dev/ttyUSB0}; may change with the next replug
   * @param stable a name that stays, if there is one
   * @param description what the device says of itself; may be empty
   * @param mayOpen whether this user may read and write it
   * @param remedy what to do if not; otherwise empty
   */
  public record PortInfo(
      String device, Optional<String> stable, String description, boolean mayOpen, String remedy) {

    /** The name to write into a configuration. */
    public String bestPath() {
      return stable.orElse(device);
    }
  }

  /** All ports, those with a stable name first, by name. */
  public List<PortInfo> list() {
    Map<Path, String> stable = stableNames();
    Map<Path, String> descriptions = new HashMap<>();
    for (SerialPort port : SerialPort.getCommPorts()) {
      descriptions.put(Path.of(port.getSystemPortPath()), description(port));
    }
    stable.keySet().forEach(device -> descriptions.putIfAbsent(device, ""));
    List<PortInfo> ports = new ArrayList<>();
    descriptions.forEach(
        (device, description) -> ports.add(info(device, stable.get(device), description)));
    ports.sort(
        Comparator.comparing((PortInfo port) -> port.stable().isEmpty())
            .thenComparing(PortInfo::bestPath));
    return List.copyOf(ports);
  }

  private static String description(SerialPort port) {
    String description = port.getDescriptivePortName();
    // The library's word for a port it was asked to open by path.
    return description == null || description.equals("User-Specified Port")
        ? ""
        : description.strip();
  }

  private static PortInfo info(Path device, @Nullable String stable, String description) {
    boolean mayOpen = Files.isReadable(device) && Files.isWritable(device);
    return new PortInfo(
        device.toString(),
        Optional.ofNullable(stable),
        description,
        mayOpen,
        mayOpen ? "" : PortAccess.remedy(device));
  }

  private Map<Path, String> stableNames() {
    Map<Path, String> names = new HashMap<>();
    if (!Files.isDirectory(byId)) {
      return names;
    }
    try (Stream<Path> links = Files.list(byId)) {
      for (Path link : links.sorted().toList()) {
        try {
          names.putIfAbsent(link.toRealPath(), link.toString());
        } catch (IOException e) {
          // A link whose device was just pulled names no port.
        }
      }
    } catch (IOException e) {
      // Without the directory there are no stable names; the ports themselves are still listed.
    }
    return names;
  }
}
