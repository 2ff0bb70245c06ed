package feedwitness.app;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.quantity.Octets;
import feedwitness.simulate.PseudoTerminal;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A real recording (recordings/SOURCES.md) sent as text lines over a pseudo-terminal, compared with
 * the recorder's own values at 25 °C.
 */
@Timeout(120)
class RecordingThroughTheWireTest {
  @TempDir Path folder;

  private record Row(String conductivity, String celsius, double at25MilliSiemensPerCm) {}

  @Test
  void refersACoolingSolutionTo25DegreesAsTheRecorderDid() throws Exception {
    List<Row> rows = rows();
    try (PseudoTerminal recorder = PseudoTerminal.open();
        ServiceUnderTest service =
            ServiceUnderTest.start(
                folder,
                """
                [[point]]
                name = "bench"
                title = "Bench"
                place = "other"
                port = "%s"
                profile = "pushed-csv"
                compensation = "linear"
                percent-per-kelvin = 1.91
                """
                    .formatted(recorder.slavePath()))) {
      Instant start = Instant.now();
      for (int tries = 0; !recorder.hasListener() && tries < 1000; tries++) {
        Thread.sleep(10);
      }
      // The first line after opening may be a torn one and is never taken.
      recorder.write(Octets.ofText("\r\n"));
      for (Row row : rows) {
        recorder.write(Octets.ofText(row.conductivity() + "," + row.celsius() + "\r\n"));
        Thread.sleep(10);
      }
      String range =
          "/api/v1/points/bench/measurements?points=5000&from="
              + start.minusSeconds(5)
              + "&to="
              + start.plusSeconds(600);
      JsonNode course =
          service.await(range, answer -> answer.path("measurements").size() >= rows.size());
      assertEquals(rows.size(), course.path("measurements").size());
      compare(rows, course.path("measurements"));
    }
  }

  private static void compare(List<Row> rows, JsonNode measurements) {
    for (int i = 0; i < rows.size(); i++) {
      double expected = rows.get(i).at25MilliSiemensPerCm();
      double measured = measurements.get(i).path("conductivity25_mS_cm").asDouble();
      // The recorder rounds conductivity to 0.1 µS/cm and temperature to 0.001 °C.
      assertEquals(expected, measured, 0.0001 * expected, "row " + i);
    }
  }

  private static List<Row> rows() throws Exception {
    List<Row> rows = new ArrayList<>();
    try (InputStream in =
        RecordingThroughTheWireTest.class.getResourceAsStream(
            "/recordings/bench_reference_excerpt.csv")) {
      assertTrue(in != null, "the excerpt is missing");
      for (String line : new String(in.readAllBytes(), UTF_8).lines().skip(1).toList()) {
        String[] words = line.split(",", -1);
        rows.add(new Row(words[0], words[1], Double.parseDouble(words[2]) / 1000));
      }
    }
    assertEquals(300, rows.size());
    return rows;
  }
}
