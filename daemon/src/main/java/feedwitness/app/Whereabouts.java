package feedwitness.app;

import feedwitness.publish.RemoteService;
import feedwitness.publish.access.Passport;
import feedwitness.settings.Config;
import feedwitness.settings.ConfigFiles;
import feedwitness.settings.ConfigOutcome;
import feedwitness.settings.ConfigReader;
import feedwitness.store.Occupancy;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/**
 * Finds the readings a command is about. Whether a service runs is decided by whether it has the
 * history open, and where it answers by what it wrote into its lock file, so that a service on an
 * unusual port is found and another one is never taken for it.
 */
@SuppressWarnings("NullAway.Init") // picocli fills the fields
final class Whereabouts {
  @Option(
      names = "--config",
      paramLabel = "FILE",
      description = "The configuration of the service, as given to run.")
  private @Nullable Path config;

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description =
          "Where its readings lie. Default: what the configuration says, or ./feedwitness-data.")
  private @Nullable Path data;

  @Option(
      names = "--url",
      paramLabel = "URL",
      description =
          "Where its page is, such as http://127.0.0.1:8460/, if this user may not look into its"
              + " data directory.")
  private @Nullable URI url;

  /** What was found. */
  sealed interface Found {
    /** A service that answers. */
    record Running(RemoteService service) implements Found {}

    /** Nobody has the readings open. */
    record Stopped(Config config, ConfigFiles files) implements Found {}

    /** {@code message}: item and remedy. */
    record Nothing(String message, int exitCode) implements Found {}
  }

  /**
   * Looks once.
   *
   * @param mayBeNew whether a directory without readings yet is as good as a stopped service
   */
  Found find(boolean mayBeNew) {
    if (url != null && config == null) {
      return named(url, Passport.NONE);
    }
    ConfigFiles files = files();
    ConfigOutcome outcome = ConfigReader.read(files);
    if (outcome instanceof ConfigOutcome.Faulty faulty) {
      return new Found.Nothing(
          faulty.problems().stream().map(p -> p.text()).collect(Collectors.joining("\n")),
          Exit.USAGE);
    }
    Config read =
        ((ConfigOutcome.Read) outcome)
            .config()
            .with(null, data == null ? null : data.toAbsolutePath().normalize());
    if (url != null) {
      return named(url, Passports.of(read));
    }
    Found found = look(read, files);
    boolean named = config != null || data != null;
    boolean empty = Occupancy.of(read.storeDirectory()) instanceof Occupancy.Absent;
    return mayBeNew && named && empty ? new Found.Stopped(read, files) : found;
  }

  /** Whether a service is named rather than files. */
  boolean namesService() {
    return url != null;
  }

  /** The data directory, whatever is in it. */
  Path directory() {
    ConfigFiles files = files();
    if (data != null) {
      return data.toAbsolutePath().normalize();
    }
    return ConfigReader.read(files) instanceof ConfigOutcome.Read read
        ? read.config().storeDirectory()
        : files.store();
  }

  private static Found named(URI at, Passport passport) {
    return isAddress(at)
        ? answering(at, passport, "give the address of its page, or leave --url out")
        : new Found.Nothing(
            "--url %s is no address such as http://127.0.0.1:8460/".formatted(at), Exit.USAGE);
  }

  private static Found look(Config config, ConfigFiles files) {
    Path directory = config.storeDirectory();
    Occupancy occupancy = Occupancy.of(directory);
    if (occupancy instanceof Occupancy.Absent) {
      return new Found.Nothing(
          "there are no readings in %s; name the configuration of the service with --config, or its data directory with --data"
              .formatted(directory),
          Exit.FAILED);
    }
    if (occupancy instanceof Occupancy.Hidden hidden) {
      return new Found.Nothing(
          "%s may not be read by this user; if the service runs, give the address of its page with --url http://%s/, else become its user (for example: sudo -u feedwitness)"
              .formatted(hidden.path(), config.listen().text()),
          Exit.FAILED);
    }
    if (occupancy instanceof Occupancy.Taken taken) {
      if (taken.url().isBlank()) {
        return new Found.Nothing(
            "the readings in %s are in use by a Feedwitness that is starting or stopping, or by another command; try again in a minute"
                .formatted(directory),
            Exit.FAILED);
      }
      return answering(
          URI.create(taken.url()),
          Passports.of(config),
          "a service has the readings in %s open but does not answer; look at its log, restart it, then try again"
              .formatted(directory));
    }
    return new Found.Stopped(config, files);
  }

  private static Found answering(URI at, Passport passport, String remedy) {
    try {
      RemoteService service = new RemoteService(at, passport);
      service.now();
      return new Found.Running(service);
    } catch (IOException e) {
      return new Found.Nothing(e.getMessage() + "; " + remedy, Exit.FAILED);
    }
  }

  private static boolean isAddress(URI url) {
    return url.getHost() != null
        && ("http".equals(url.getScheme()) || "https".equals(url.getScheme()));
  }

  private ConfigFiles files() {
    if (config != null) {
      return ConfigFiles.beside(config, ZoneId.systemDefault());
    }
    return ConfigFiles.without(
        data == null ? Path.of("feedwitness-data") : data, ZoneId.systemDefault());
  }
}
