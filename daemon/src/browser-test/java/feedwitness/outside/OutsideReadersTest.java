package feedwitness.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.app.ServiceUnderTest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Debian's feed reader and metrics client read the real service. */
@Timeout(180)
class OutsideReadersTest {
  /** Debian's own, for which the readers are installed; another may come first on the path. */
  private static final String PYTHON = "/usr/bin/python3";

  private static final int NOTES = 600;

  private static final String POINTS =
      """
      [[point]]
      name = "drain"
      title = 'Run-off of "bench 3" \\ <east> & west'
      place = "drain"
      conductivity-high = "2.4 mS/cm"
      [[alarm]]
      kind = "conductivity-high"
      on-delay = "0s"
      """;

  @TempDir Path folder;

  @Test
  void readTheFeedWithItsArchivesAndTheMetricsInBothFormats() throws Exception {
    try (ServiceUnderTest service = ServiceUnderTest.start(folder, POINTS)) {
      service.post(
          "/api/v1/points/drain/readings",
          "{\"conductivity\":2.9,\"unit\":\"mS/cm\",\"compensated\":\"to-25\"}",
          201);
      service.await("/api/v1/alarms", all -> all.get("needs_answer").asInt() == 1);
      service.post(
          "/api/v1/alarms/drain/conductivity-high/acknowledge",
          "{\"who\":\"Kim & <Jo>\",\"note\":\"rinsed\\n\\\"twice\\\" ]]>\"}",
          200);
      for (int i = 0; i < NOTES; i++) {
        service.post("/api/v1/journal", "{\"author\":\"Kim\",\"text\":\"note\"}", 201);
      }
      String said = read(service);
      // each note and its line in the audit: two archives of 500 and what is current
      assertTrue(said.contains("in 3 feed documents"), said);
    }
  }

  private static String read(ServiceUnderTest service) throws Exception {
    Process reader =
        new ProcessBuilder(
                PYTHON, "src/browser-test/python/outside_readers.py", service.page().toString())
            .redirectErrorStream(true)
            .start();
    String said = new String(reader.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(reader.waitFor(60, TimeUnit.SECONDS), said);
    assertEquals(
        0,
        reader.exitValue(),
        () -> said + "\nneeds Debian's python3-prometheus-client and python3-feedparser");
    return said;
  }
}
