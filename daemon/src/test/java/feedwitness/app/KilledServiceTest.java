package feedwitness.app;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The demo as a process of its own, killed without warning. */
@Timeout(180)
class KilledServiceTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Pattern PAGE = Pattern.compile("page +(http://\\S+)");

  @TempDir Path folder;

  @Test
  void losesNothingThatWasSaidToBeSafe() throws Exception {
    JsonNode safe;
    try (Demo demo = new Demo()) {
      safe = demo.await("/health", h -> h.at("/durable_through/sequence").asLong() > 20);
      demo.killWithoutWarning();
    }
    long lastSafe = safe.at("/durable_through/sequence").asLong();
    try (Demo demo = new Demo()) {
      assertEquals(2, demo.get("/health").path("boot").asInt());
      long kept = 0;
      for (String point : new String[] {"line", "tank", "source"}) {
        JsonNode course =
            demo.get(
                "/api/v1/points/"
                    + point
                    + "/measurements?points=5000&from="
                    + safe.path("started").asText()
                    + "&to="
                    + safe.at("/durable_through/synced_at").asText());
        for (JsonNode each : course.path("measurements")) {
          kept += each.path("readings").asLong() + each.path("missing").asLong();
        }
      }
      assertTrue(kept >= lastSafe, kept + " kept of " + lastSafe + " that were safe");
    }
  }

  /** A child process of this test. */
  private final class Demo implements AutoCloseable {
    private final Process process;
    private final URI page;
    private final HttpClient http = HttpClient.newHttpClient();

    Demo() throws Exception {
      process =
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-cp",
                  System.getProperty("java.class.path"),
                  "feedwitness.app.Main",
                  "demo",
                  "--data",
                  folder.resolve("demo").toString(),
                  "--listen",
                  "127.0.0.1:0",
                  "--speed",
                  "5")
              .redirectError(folder.resolve("errors.txt").toFile())
              .start();
      page = greeting();
    }

    private URI greeting() throws Exception {
      BufferedReader out =
          new BufferedReader(new InputStreamReader(process.getInputStream(), UTF_8));
      StringBuilder said = new StringBuilder();
      String line = out.readLine();
      while (line != null) {
        said.append(line).append('\n');
        Matcher match = PAGE.matcher(line);
        if (match.find()) {
          return URI.create(match.group(1));
        }
        line = out.readLine();
      }
      return fail("the demo did not say where its page is: " + said);
    }

    JsonNode get(String path) throws Exception {
      return JSON.readTree(
          http.send(
                  HttpRequest.newBuilder(page.resolve(path)).build(),
                  HttpResponse.BodyHandlers.ofString())
              .body());
    }

    JsonNode await(String path, Predicate<JsonNode> wanted) throws Exception {
      for (int i = 0; i < 600; i++) {
        JsonNode answer = get(path);
        if (wanted.test(answer)) {
          return answer;
        }
        Thread.sleep(100);
      }
      return fail("waited in vain for " + path);
    }

    void killWithoutWarning() {
      process.destroyForcibly();
    }

    @Override
    public void close() throws Exception {
      process.destroy();
      if (!process.waitFor(30, TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
    }
  }
}
