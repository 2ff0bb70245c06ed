package feedwitness.app;

import feedwitness.host.ClockTrust;
import feedwitness.quantity.ListenAddress;
import feedwitness.quantity.TimeSource;
import feedwitness.settings.Config;
import feedwitness.settings.ConfigFiles;
import feedwitness.settings.ConfigOutcome;
import feedwitness.settings.ConfigReader;
import feedwitness.simulate.Nursery;
import feedwitness.simulate.NurseryOptions;
import feedwitness.simulate.NurseryRunner;
import feedwitness.simulate.RunningNursery;
import feedwitness.simulate.Schedule;
import feedwitness.simulate.ScheduleException;
import feedwitness.simulate.SimulatedClock;
import feedwitness.wire.PortCatalog;
import feedwitness.wire.SystemPorts;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The real service on a nursery that exists only in this computer. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    header = "Shows the service at work on a nursery that exists only in this computer.",
    description =
        "%nWater, tank, injector and probes are simulated; the cables are real pseudo-terminals, and"
            + " the real service reads them. The week holds a fault a day; --speed 60 plays a day"
            + " in 24 minutes.%n")
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class DemoCommand implements Callable<Integer> {
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("EEEE d MMMM uuuu HH:mm", Locale.ENGLISH);

  /** Two probes share the bus: each is read at least every five seconds of the nursery's. */
  private static final Duration LEAD = Duration.ofMillis(2500);

  @Spec private CommandSpec spec;

  @Option(
      names = "--speed",
      paramLabel = "N",
      defaultValue = "1",
      description =
          "How many times faster than real time at most, 1 to 3600; the nursery's clock waits for"
              + " the probes to be read. Default: ${DEFAULT-VALUE}.")
  private double speed;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description =
          "Chance of this nursery; the same seed plays the same. Default:" + " ${DEFAULT-VALUE}.")
  private long seed;

  @Option(
      names = "--schedule",
      paramLabel = "FILE",
      description = "What happens when, instead of the week that comes with the program.")
  private @Nullable Path schedule;

  @Option(
      names = "--data",
      paramLabel = "DIR",
      defaultValue = "feedwitness-demo",
      description = "Where readings are kept. Default: ./${DEFAULT-VALUE}.")
  private Path data;

  @Option(
      names = "--listen",
      paramLabel = "HOST:PORT",
      converter = ListenOption.class,
      defaultValue = "127.0.0.1:8460",
      description = "Where the page is served. Default: ${DEFAULT-VALUE}.")
  private ListenAddress listen;

  @Option(
      names = "--for",
      paramLabel = "DURATION",
      converter = DurationOption.class,
      description = "Stop by itself after this time. Default: never.")
  private @Nullable Duration howLong;

  @Override
  public Integer call() throws IOException {
    if (!(speed >= 1 && speed <= 3600)) {
      throw new ParameterException(
          spec.commandLine(), "--speed %s is outside 1 to 3600".formatted(speed));
    }
    DemoFolder folder = DemoFolder.open(data);
    SimulatedClock clock =
        SimulatedClock.waiting(
            TimeSource.system(), folder.clockStart(speed, Instant.now()), speed, LEAD);
    Nursery nursery =
        new Nursery(new NurseryOptions(seed, DemoFolder.ZONE, readSchedule()), clock.wall());
    try (RunningNursery running = NurseryRunner.start(nursery, clock, folder.ports())) {
      return serve(running, folder, clock);
    }
  }

  private Schedule readSchedule() throws IOException {
    if (schedule == null) {
      return Schedule.week();
    }
    try {
      return Schedule.read(schedule);
    } catch (ScheduleException e) {
      throw new ParameterException(spec.commandLine(), String.join("\n", e.problems()), e);
    }
  }

  private int serve(RunningNursery nursery, DemoFolder folder, SimulatedClock clock)
      throws IOException {
    PrintWriter err = spec.commandLine().getErr();
    ConfigFiles files = folder.writeConfig(nursery.sourceLink(), nursery.busLink(), listen);
    ConfigOutcome outcome = ConfigReader.read(files);
    if (outcome instanceof ConfigOutcome.Faulty faulty) {
      CheckConfigCommand.report(faulty, err);
      return CheckConfigCommand.CANNOT_BE_USED;
    }
    Config config = ((ConfigOutcome.Read) outcome).config();
    Wiring.Outcome started =
        Wiring.start(
            config,
            files,
            new Wiring.Surroundings(
                clock,
                ClockTrust.ALWAYS,
                speed,
                new SystemPorts(),
                new PortCatalog(folder.ports())));
    if (started instanceof Wiring.Outcome.Refused refused) {
      err.println(refused.message());
      return 1;
    }
    Wiring.Service service = ((Wiring.Outcome.Started) started).service();
    greet(service, folder, clock.wall());
    try (DemoFolder.ClockKeeper keeper = folder.keep(clock)) {
      keeper.start();
      Stay.until(howLong, service);
    }
    return 0;
  }

  private void greet(Wiring.Service service, DemoFolder folder, Instant start) {
    PrintWriter out = spec.commandLine().getOut();
    ZonedDateTime local = start.atZone(DemoFolder.ZONE);
    out.println("Quarry End Nursery is open. It exists only in this computer.");
    out.printf("  page   %s%n", service.page());
    out.printf("  data   %s%n", folder.root());
    out.printf("  cables %s%n", folder.ports());
    out.printf(
        Locale.ROOT,
        "  clock  %s%s%n",
        WHEN.format(local),
        speed == 1
            ? ", as fast as yours; --speed 60 plays a day in 24 minutes"
            : String.format(
                Locale.ROOT,
                ", up to %s times as fast as yours; it waits for the probes to be read",
                plain(speed)));
    out.println("  stop   Ctrl-C");
    out.flush();
  }

  private static String plain(double number) {
    return number == Math.rint(number)
        ? Long.toString(Math.round(number))
        : Double.toString(number);
  }
}
