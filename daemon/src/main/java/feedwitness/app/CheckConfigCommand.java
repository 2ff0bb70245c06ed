package feedwitness.app;

import feedwitness.settings.Config;
import feedwitness.settings.ConfigFiles;
import feedwitness.settings.ConfigOutcome;
import feedwitness.settings.ConfigReader;
import feedwitness.site.MeasuringPoint;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Reads a configuration and says what is wrong with it, or what it means. */
@Command(
    name = "check-config",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    header = "Checks a configuration and names everything wrong with it at once.",
    description = "%nEach fault with file, line, column and what to do. Starts nothing.%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {"0:the configuration can be used", "2:it cannot"})
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class CheckConfigCommand implements Callable<Integer> {
  static final int CANNOT_BE_USED = 2;

  @Spec private CommandSpec spec;

  @Option(
      names = "--config",
      required = true,
      paramLabel = "FILE",
      description = "The configuration to check.")
  private Path config;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    ConfigOutcome outcome = ConfigReader.read(ConfigFiles.beside(config, ZoneId.systemDefault()));
    if (outcome instanceof ConfigOutcome.Faulty faulty) {
      report(faulty, err);
      return CANNOT_BE_USED;
    }
    ConfigOutcome.Read read = (ConfigOutcome.Read) outcome;
    describe(read.config(), out);
    read.notes().forEach(note -> out.println("note: " + note));
    out.flush();
    return wayIn(read.config(), err);
  }

  /** Files of {@code [web]}: other than a cable they do not come by themselves. */
  private static int wayIn(Config config, PrintWriter err) {
    WayIn.Outcome outcome = WayIn.of(config, () -> true);
    List<String> trouble =
        outcome instanceof WayIn.Outcome.Refused refused
            ? List.of(refused.message())
            : ((WayIn.Outcome.Ready) outcome).way().trouble();
    trouble.forEach(err::println);
    err.flush();
    return trouble.isEmpty() ? 0 : CANNOT_BE_USED;
  }

  static void report(ConfigOutcome.Faulty faulty, PrintWriter err) {
    faulty.problems().forEach(problem -> err.println(problem.text()));
    int count = faulty.problems().size();
    err.println(
        count == 1 ? "1 problem; nothing was started." : count + " problems; nothing was started.");
    err.flush();
  }

  private void describe(Config read, PrintWriter out) {
    out.printf("%s can be used.%n", config);
    out.printf("  %s, time zone %s%n", read.site().name(), read.site().zone());
    out.printf(
        "  page on %s://%s/, data in %s%n",
        read.web().certificate().isPresent() ? "https" : "http",
        read.listen().text(),
        read.storeDirectory());
    for (MeasuringPoint point : read.site().points()) {
      out.printf(
          "  %-12s %s%n",
          point.name(),
          point
              .probe()
              .map(
                  mount ->
                      mount.profile().name()
                          + " on "
                          + mount.link().text()
                          + (mount.unit() == 0 ? "" : ", unit " + mount.unit()))
              .orElse("typed by hand"));
    }
    out.flush();
  }
}
