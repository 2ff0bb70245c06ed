package feedwitness.app;

import feedwitness.acquire.PortPlan;
import feedwitness.acquire.ProbePlan;
import feedwitness.profile.DeviceProfile;
import feedwitness.profile.Protocol;
import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.PointName;
import feedwitness.settings.ProfileShelf;
import feedwitness.wire.SystemPorts;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Shows what arrives on a port, octet by octet, and what a profile makes of it. */
@Command(
    name = "listen",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    header = "Shows what arrives on a port and what a device profile makes of it.",
    description =
        "%nThe tool for setting up a probe: octets in hex and text, whole messages, rejected ones"
            + " with the reason, and readings. Stop with Ctrl-C.%n")
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class ListenCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(
      index = "0",
      paramLabel = "PORT",
      description = "A port as 'ports' shows it, or tcp:HOST:PORT.")
  private String port;

  @Option(
      names = "--profile",
      required = true,
      paramLabel = "NAME",
      description = "A device profile by name, or a file ending in .toml.")
  private String profile;

  @Option(
      names = "--unit",
      paramLabel = "N",
      defaultValue = "1",
      description = "Modbus address of the instrument, 1 to 247. Default: ${DEFAULT-VALUE}.")
  private int unit;

  @Option(
      names = "--config",
      paramLabel = "FILE",
      description = "Look for your own profiles beside this configuration.")
  private @Nullable Path config;

  @Option(
      names = "--for",
      paramLabel = "DURATION",
      converter = DurationOption.class,
      description = "Stop after this time, for example 30s. Default: go on until stopped.")
  private @Nullable Duration howLong;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    LinkAddress link = link();
    DeviceProfile chosen = chosen();
    boolean modbus = chosen.protocol() instanceof Protocol.Modbus;
    if (modbus && (unit < 1 || unit > 247)) {
      throw usage("--unit %d is outside 1 to 247".formatted(unit));
    }
    out.printf(
        "%s as '%s' (%s)%s%n",
        link.text(), chosen.name(), chosen.serial().text(), modbus ? ", asking unit " + unit : "");
    out.flush();
    Listening listening =
        new Listening(
            new PortPlan(
                link,
                chosen.serial(),
                List.of(new ProbePlan(new PointName("probe"), chosen, modbus ? unit : 0))),
            new SystemPorts(),
            new ListeningPrinter(out));
    Duration limit = howLong;
    if (limit == null) {
      listening.listenForEver();
    } else {
      listening.listen(limit);
    }
    return 0;
  }

  private LinkAddress link() {
    try {
      return LinkAddress.parse(port);
    } catch (IllegalArgumentException e) {
      throw usage(String.valueOf(e.getMessage()));
    }
  }

  private DeviceProfile chosen() {
    if (profile.endsWith(".toml")) {
      ProfileShelf.FileOutcome outcome = ProfileShelf.readFile(Path.of(profile));
      if (outcome instanceof ProfileShelf.FileOutcome.Faulty faulty) {
        StringBuilder text = new StringBuilder("the profile cannot be used:");
        faulty.problems().forEach(problem -> text.append("\n  ").append(problem.text()));
        throw usage(text.toString());
      }
      return ((ProfileShelf.FileOutcome.Good) outcome).profile();
    }
    Path beside = config == null ? Path.of("profiles") : config.resolveSibling("profiles");
    ProfileShelf shelf = ProfileShelf.read(beside);
    Optional<DeviceProfile> found = shelf.find(profile);
    return found.orElseThrow(
        () ->
            usage(
                "there is no profile '%s'; there are %s"
                    .formatted(profile, String.join(", ", shelf.names()))));
  }

  private ParameterException usage(String message) {
    return new ParameterException(spec.commandLine(), message);
  }
}
