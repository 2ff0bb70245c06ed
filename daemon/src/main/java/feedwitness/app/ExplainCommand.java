package feedwitness.app;

import feedwitness.ledger.History;
import feedwitness.measurement.Explanation;
import feedwitness.measurement.Measurement;
import feedwitness.publish.ExplanationText;
import feedwitness.publish.access.Passport;
import feedwitness.quantity.PointName;
import feedwitness.quantity.TimeSource;
import feedwitness.settings.Config;
import feedwitness.settings.ConfigFiles;
import feedwitness.settings.ConfigOutcome;
import feedwitness.settings.ConfigReader;
import feedwitness.store.StoredHistory;
import java.net.URI;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
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

/** Takes a number apart. */
@Command(
    name = "explain",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Says how a number was made: the octets that came, what they say, how that was corrected",
      "and referred to 25 °C, how sure it is and why, and what the quality tests think of it.",
      "Asks the running service; while it is stopped, looks into what it kept.",
      ""
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:explained",
      "1:there is nothing to explain, or nobody to ask; the reason is printed",
      "2:the configuration or the command line cannot be used"
    })
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class ExplainCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "POINT", description = "Name of a measuring point.")
  private String point;

  @Parameters(
      index = "1",
      paramLabel = "TIME",
      defaultValue = "now",
      description = "The last sample at or before it, for example " + MomentText.EXAMPLES + ".")
  private String time;

  @Option(
      names = "--config",
      paramLabel = "FILE",
      description = "The configuration of the service. Default: none, as with 'run'.")
  private @Nullable Path config;

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "Where readings are kept, if the service was told so too.")
  private @Nullable Path data;

  @Option(
      names = "--url",
      paramLabel = "URL",
      description = "Ask the service whose page is there, for example http://127.0.0.1:8460/.")
  private @Nullable URI url;

  @Override
  public Integer call() {
    if (!PointName.isValid(point)) {
      return refuse(2, "'%s' is no name of a measuring point".formatted(point));
    }
    if (url != null) {
      return fromService(url);
    }
    ConfigOutcome outcome = ConfigReader.read(files());
    if (outcome instanceof ConfigOutcome.Faulty faulty) {
      CheckConfigCommand.report(faulty, spec.commandLine().getErr());
      return CheckConfigCommand.CANNOT_BE_USED;
    }
    Config known =
        ((ConfigOutcome.Read) outcome)
            .config()
            .with(null, data == null ? null : data.toAbsolutePath());
    ZoneId zone = known.site().zone();
    ServiceClient.Answer answer =
        new ServiceClient(page(known), Passports.of(known)).get(path(zone));
    return answer instanceof ServiceClient.Answer.Nobody
        ? fromStore(known.storeDirectory(), zone)
        : answered(answer, zone);
  }

  /** What listens on every address is asked at this machine's own. */
  private static URI page(Config config) {
    String scheme = config.web().certificate().isPresent() ? "https" : "http";
    String host = config.listen().text().replace("0.0.0.0:", "127.0.0.1:").replace("[::]", "[::1]");
    return URI.create(scheme + "://" + host + "/");
  }

  private int fromService(URI page) {
    if (!"http".equals(page.getScheme()) || page.getHost() == null) {
      return refuse(2, "--url %s is no address such as http://127.0.0.1:8460/".formatted(page));
    }
    ZoneId zone = ZoneId.systemDefault();
    return answered(new ServiceClient(page, Passport.NONE).get(path(zone)), zone);
  }

  private ConfigFiles files() {
    if (config != null) {
      return ConfigFiles.beside(config, ZoneId.systemDefault());
    }
    Path directory = data == null ? Path.of("feedwitness-data") : data;
    return ConfigFiles.without(directory, ZoneId.systemDefault());
  }

  /** Without a time the service takes its own clock, which in a demo is not ours. */
  private String path(ZoneId zone) {
    String address = "api/v1/points/" + point + "/explain";
    return time.equalsIgnoreCase("now") ? address : address + "?at=" + moment(zone);
  }

  private Instant moment(ZoneId zone) {
    Instant now = TimeSource.system().wall();
    return MomentText.read(time, now, zone)
        .orElseThrow(
            () ->
                new ParameterException(
                    spec.commandLine(),
                    "'%s' is no time such as %s".formatted(time, MomentText.EXAMPLES)));
  }

  private int answered(ServiceClient.Answer answer, ZoneId zone) {
    if (answer instanceof ServiceClient.Answer.Given given) {
      return print(ExplanationText.of(given.body(), zone));
    }
    return refuse(
        1,
        answer instanceof ServiceClient.Answer.Refused refused
            ? refused.message()
            : ((ServiceClient.Answer.Nobody) answer).message()
                + "; start it, or name its configuration with --config");
  }

  private int fromStore(Path directory, ZoneId zone) {
    Instant at = moment(zone);
    StoredHistory.Opening outcome = StoredHistory.open(directory);
    if (outcome instanceof StoredHistory.Opening.Refused refused) {
      return refuse(1, refused.message());
    }
    try (StoredHistory stored = ((StoredHistory.Opening.Opened) outcome).history()) {
      PointName name = new PointName(point);
      Optional<Measurement> found = stored.asOf(name, at);
      return found.isPresent()
          ? print(ExplanationText.of(Explanation.of(found.get(), List.of()), zone))
          : refuse(1, History.nothing(name, at));
    }
  }

  private int print(List<String> lines) {
    lines.forEach(spec.commandLine().getOut()::println);
    spec.commandLine().getOut().flush();
    return 0;
  }

  private int refuse(int code, String message) {
    spec.commandLine().getErr().println(message);
    spec.commandLine().getErr().flush();
    return code;
  }
}
