package feedwitness.app;

import feedwitness.publish.RemoteService;
import java.io.IOException;
import java.io.PrintWriter;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Which devices are paired; shuts one out. */
@Command(
    name = "devices",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    header = "Lists the paired devices, or shuts one out.",
    description = "%nAsks the running service.%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:listed, or shut out",
      "1:it could not be done; the reason is printed",
      "2:an option or the configuration cannot be used"
    })
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class DevicesCommand implements Callable<Integer> {
  private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");

  @Spec private CommandSpec spec;

  @Mixin private Whereabouts whereabouts;

  @Option(
      names = "--shut-out",
      paramLabel = "NAME",
      description = "From now on this device is not let in any more.")
  private @Nullable String shutOut;

  @Override
  public Integer call() {
    String device = shutOut;
    return Asking.service(
        spec,
        whereabouts,
        "devices",
        device == null
            ? DevicesCommand::list
            : (service, out) -> out.printf("%s is shut out.%n", service.revoke(device)));
  }

  private static void list(RemoteService service, PrintWriter out) throws IOException {
    List<RemoteService.PairedDevice> devices = service.devices();
    if (devices.isEmpty()) {
      out.println("No device is paired. To let one in: feedwitness pair");
      return;
    }
    ZoneId zone = service.zone();
    for (RemoteService.PairedDevice device : devices) {
      out.printf(
          "%-24s %-12s paired %s by %s, last seen %s%n",
          device.name(),
          device.role(),
          moment(device.pairedAt(), zone, "(undated)"),
          device.pairedBy(),
          moment(device.lastSeen(), zone, "not since the service started"));
    }
  }

  private static String moment(Optional<Instant> time, ZoneId zone, String otherwise) {
    return time.map(known -> MINUTE.withZone(zone).format(known)).orElse(otherwise);
  }
}
