package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.fail;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import feedwitness.host.ClockTrust;
import feedwitness.quantity.ListenAddress;
import feedwitness.quantity.TimeSource;
import feedwitness.settings.ConfigFiles;
import feedwitness.settings.ConfigOutcome;
import feedwitness.settings.ConfigReader;
import feedwitness.wire.PortCatalog;
import feedwitness.wire.SystemPorts;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.function.Predicate;

/** The whole service in this process, on a configuration and a free port. */
public final class ServiceUnderTest implements AutoCloseable {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int TRIES = 300;

  private final Wiring.Service service;
  private final HttpClient http = HttpClient.newHttpClient();

  private ServiceUnderTest(Wiring.Service service) {
    this.service = service;
  }

  /** Writes the configuration into the folder and starts on it. */
  public static ServiceUnderTest start(Path folder, String points) throws IOException {
    return start(folder, points, TimeSource.system(), 1);
  }

  /** With a clock that runs {@code pace} times as fast. */
  public static ServiceUnderTest start(Path folder, String points, TimeSource clock, double pace)
      throws IOException {
    Path file = folder.resolve("feedwitness.toml");
    Files.writeString(
        file,
        """
        [nursery]
        name = "Quarry End Nursery"
        zone = "Europe/London"
        [server]
        listen = "127.0.0.1:0"
        [store]
        sync-every = "1s"
        """
            + points);
    return start(ConfigFiles.beside(file, ZoneOffset.UTC), folder, clock, pace);
  }

  /** With no configuration at all. */
  public static ServiceUnderTest startEmpty(Path folder, Path cables) {
    return start(ConfigFiles.without(folder, ZoneOffset.UTC), cables, TimeSource.system(), 1);
  }

  private static ServiceUnderTest start(
      ConfigFiles files, Path cables, TimeSource clock, double pace) {
    ConfigOutcome outcome = ConfigReader.read(files);
    ConfigOutcome.Read read =
        assertInstanceOf(ConfigOutcome.Read.class, outcome, outcome::toString);
    Wiring.Outcome started =
        Wiring.start(
            read.config().with(new ListenAddress("127.0.0.1", 0), null),
            files,
            new Wiring.Surroundings(
                clock, ClockTrust.ALWAYS, pace, new SystemPorts(), new PortCatalog(cables)));
    return new ServiceUnderTest(
        assertInstanceOf(Wiring.Outcome.Started.class, started, started::toString).service());
  }

  /** Where the page is. */
  public URI page() {
    return service.page();
  }

  /** GET of a JSON answer. */
  public JsonNode get(String path) throws Exception {
    HttpResponse<String> answer =
        http.send(
            HttpRequest.newBuilder(page().resolve(path)).build(),
            HttpResponse.BodyHandlers.ofString());
    return JSON.readTree(answer.body());
  }

  /** POST of a JSON body; fails unless the answer has the given status. */
  public JsonNode post(String path, String body, int status) throws Exception {
    HttpResponse<String> answer =
        http.send(
            HttpRequest.newBuilder(page().resolve(path))
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build(),
            HttpResponse.BodyHandlers.ofString());
    if (answer.statusCode() != status) {
      fail(answer.statusCode() + ": " + answer.body());
    }
    return JSON.readTree(answer.body());
  }

  /** Asks until the answer is as wanted; the last answer then. */
  public JsonNode await(String path, Predicate<JsonNode> wanted) throws Exception {
    return await(path, wanted, TRIES);
  }

  /** The same for what takes longer; {@code tries} are tenths of a second. */
  JsonNode await(String path, Predicate<JsonNode> wanted, int tries) throws Exception {
    JsonNode answer = get(path);
    for (int i = 0; i < tries && !wanted.test(answer); i++) {
      Thread.sleep(100);
      answer = get(path);
    }
    if (!wanted.test(answer)) {
      fail("waited in vain; last answer: " + answer.toPrettyString());
    }
    return answer;
  }

  @Override
  public void close() {
    service.close();
  }
}
