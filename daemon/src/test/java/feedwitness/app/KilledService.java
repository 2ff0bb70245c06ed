package feedwitness.app;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import feedwitness.measurement.Measurement;
import feedwitness.quantity.PointName;
import feedwitness.store.StoredHistory;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The whole service as a process of its own, on the demo, killed without warning at any moment,
 * started again, and killed again. What it said to be safe must be there in the end.
 */
public final class KilledService {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Pattern PAGE = Pattern.compile("page +(http://\\S+)");

  private final Path folder;

  private KilledService(Path folder) {
    this.folder = folder;
  }

  /**
   * Kills it a number of times over one history.
   *
   * @return how many samples were said to be safe, and found
   */
  public static long kill(Path folder, int times, Random random) throws Exception {
    return new KilledService(folder).kill(times, random);
  }

  private long kill(int times, Random random) throws Exception {
    List<Long> marks = new ArrayList<>();
    for (int i = 1; i <= times; i++) {
      try (Demo demo = new Demo()) {
        marks.add(demo.lastMarkBeforeItsEnd(i, random.nextInt(2_500)));
      }
    }
    try (Demo demo = new Demo()) {
      assertEquals(times + 1, demo.get("/health").path("boot").asInt(), "every start is counted");
    }
    Map<Integer, Set<Long>> found = found();
    long safe = 0;
    for (int boot = 1; boot <= times; boot++) {
      long mark = marks.get(boot - 1);
      long there = found.getOrDefault(boot, Set.of()).stream().filter(each -> each <= mark).count();
      assertEquals(mark, there, "all up to the mark of start " + boot);
      safe += mark;
    }
    return safe;
  }

  /** Sequences by boot, of all points, each once. */
  private Map<Integer, Set<Long>> found() throws Exception {
    Map<Integer, Set<Long>> found = new HashMap<>();
    StoredHistory.Opening opening = StoredHistory.open(data());
    assertTrue(opening instanceof StoredHistory.Opening.Opened, opening::toString);
    try (StoredHistory history = ((StoredHistory.Opening.Opened) opening).history()) {
      for (PointName point : history.recorded()) {
        history.scan(point, Instant.MIN, Instant.MAX, each -> note(found, each));
      }
    }
    return found;
  }

  private static void note(Map<Integer, Set<Long>> found, Measurement each) {
    Set<Long> ofBoot = found.computeIfAbsent(each.stamp().boot(), boot -> new HashSet<>());
    assertTrue(ofBoot.add(each.stamp().sequence()), () -> "twice: " + each.stamp().id());
  }

  private Path data() throws Exception {
    try (Stream<Path> files = Files.walk(folder)) {
      return files
          .filter(file -> file.endsWith("history.mv.db"))
          .map(Path::getParent)
          .findFirst()
          .orElseThrow();
    }
  }

  /** A child process. */
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

    /** Kills it some time after it first called something safe. */
    long lastMarkBeforeItsEnd(int boot, int moreMillis) throws Exception {
      long mark = 0;
      long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
      while (System.nanoTime() < end) {
        JsonNode durable = get("/health").path("durable_through");
        if (durable.path("boot").asInt() == boot && durable.path("sequence").asLong() > mark) {
          if (mark == 0) {
            end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(moreMillis);
          }
          mark = durable.path("sequence").asLong();
        }
        Thread.sleep(20);
      }
      assertTrue(mark > 0, "nothing was called safe within a minute");
      process.destroyForcibly();
      return mark;
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
