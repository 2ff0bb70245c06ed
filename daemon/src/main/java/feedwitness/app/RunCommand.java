package feedwitness.app;

import feedwitness.host.ClockTrust;
import feedwitness.host.SynchronisedClock;
import feedwitness.quantity.ListenAddress;
import feedwitness.quantity.TimeSource;
import feedwitness.settings.ClockChoice;
import feedwitness.settings.Config;
import feedwitness.settings.ConfigFiles;
import feedwitness.settings.ConfigOutcome;
import feedwitness.settings.ConfigReader;
import feedwitness.wire.PortCatalog;
import feedwitness.wire.SystemPorts;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The service itself. */
@Command(
    name = "run",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    header = "Starts the service: reads probes, keeps readings, shows the page.",
    description =
        "%nReads the probes of a configuration. Without one it starts too, and the page sets up the"
            + " first probe.%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:stopped as asked",
      "1:could not start; the reason is printed",
      "2:the configuration cannot be used; every fault is printed"
    })
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class RunCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(
      names = "--config",
      paramLabel = "FILE",
      description = "Your configuration. Default: none; the page writes one for you.")
  private @Nullable Path config;

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description =
          "Where readings are kept. Default: what the configuration says, or"
              + " ./feedwitness-data.")
  private @Nullable Path data;

  @Option(
      names = "--listen",
      paramLabel = "HOST:PORT",
      converter = ListenOption.class,
      description =
          "Where the page is served. Default: what the configuration says, or" + " 127.0.0.1:8460.")
  private @Nullable ListenAddress listen;

  @Option(
      names = "--for",
      paramLabel = "DURATION",
      converter = DurationOption.class,
      description = "Stop by itself after this time. Default: never.")
  private @Nullable Duration howLong;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    ConfigFiles files = files();
    ConfigOutcome outcome = ConfigReader.read(files);
    if (outcome instanceof ConfigOutcome.Faulty faulty) {
      CheckConfigCommand.report(faulty, err);
      return CheckConfigCommand.CANNOT_BE_USED;
    }
    ConfigOutcome.Read read = (ConfigOutcome.Read) outcome;
    read.notes().forEach(note -> out.println("note: " + note));
    Config wanted = read.config().with(listen, data == null ? null : data.toAbsolutePath());
    Wiring.Surroundings around =
        new Wiring.Surroundings(
            TimeSource.system(),
            trust(wanted),
            1,
            new SystemPorts(),
            new PortCatalog(PortCatalog.BY_ID));
    Wiring.Outcome started = Wiring.start(wanted, files, around);
    if (started instanceof Wiring.Outcome.Refused refused) {
      err.println(refused.message());
      return 1;
    }
    Wiring.Service service = ((Wiring.Outcome.Started) started).service();
    service.notes().forEach(err::println);
    err.flush();
    out.printf("The page is at    %s%n", service.page());
    out.printf("The data lies in  %s%n", wanted.storeDirectory());
    if (wanted.site().points().isEmpty()) {
      out.println("No probe yet: the page will help you set up the first.");
    }
    out.println("Stop with Ctrl-C.");
    out.flush();
    Stay.until(howLong, service);
    return 0;
  }

  private static ClockTrust trust(Config config) {
    return config.clock() == ClockChoice.ALWAYS
        ? ClockTrust.ALWAYS
        : SynchronisedClock.ofThisMachine(TimeSource.system());
  }

  private ConfigFiles files() {
    if (config != null) {
      return ConfigFiles.beside(config, ZoneId.systemDefault());
    }
    Path directory = data == null ? Path.of("feedwitness-data") : data;
    return ConfigFiles.without(directory, ZoneId.systemDefault());
  }
}
