package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.quantity.Octets;
import feedwitness.simulate.PseudoTerminal;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

@Timeout(120)
class ExplainCommandTest {
  @TempDir Path folder;

  private record Said(int code, String out, String err) {}

  private static Said explain(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    String[] whole = new String[arguments.length + 1];
    whole[0] = "explain";
    System.arraycopy(arguments, 0, whole, 1, arguments.length);
    CommandLine line = Main.commandLine().setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    int code = line.execute(whole);
    return new Said(code, out.toString(), err.toString());
  }

  private static void assertSays(String text, String... parts) {
    String flat = text.replaceAll("\\s+", " ");
    for (String part : parts) {
      assertTrue(flat.contains(part), () -> "'" + part + "' is not in: " + text);
    }
  }

  @Test
  void followsANumberFromTheOctetsToTheFlagsWhileRunningAndWhenStopped() throws Exception {
    String time;
    String id;
    try (PseudoTerminal bench = PseudoTerminal.open();
        ServiceUnderTest service = ServiceUnderTest.start(folder, point(bench.slavePath()))) {
      JsonNode read = sendOne(bench, service);
      time = read.path("time").asText();
      id = read.path("id").asText();
      Said said = explain("bench", time, "--url", service.page().toString());
      assertEquals(0, said.code(), said.err());
      assertSays(
          said.out(),
          "bench, 2",
          "(record " + id + ")",
          "The instrument sent [31 32 30 30 2e 30 2c 31 35 2e 30] “1200.0,15.0”.",
          "That says 1200 µS/cm and 15 °C.",
          "Device profile pushed-csv",
          "No calibration is recorded, so 1.2 mS/cm stands.",
          "The water has 15 °C; referred to 25 °C that is 1.2 × 1.23153 = 1.47783 mS/cm",
          "twice the standard uncertainty",
          "the temperature sensor",
          "scatter from reading to reading (assumed)",
          "too little evidence to judge",
          "basis rules=2;profile=pushed-csv;");
    }
    useThePortNobodyListensOn();
    String config = folder.resolve("feedwitness.toml").toString();
    Said stopped = explain("bench", time, "--config", config);
    assertEquals(0, stopped.code(), stopped.err());
    assertSays(stopped.out(), "(record " + id + ")", "no longer kept", "1.47783 mS/cm");
    Said early = explain("bench", "2020-01-01 08:00", "--config", config);
    assertEquals(1, early.code());
    assertSays(
        early.err(), "nothing was recorded at bench in the 24 h before 2020-01-01T08:00:00Z");
    try (ServiceUnderTest again = ServiceUnderTest.start(folder, point(Path.of("/dev/none")))) {
      assertEquals(2, again.get("/health").path("boot").asInt(), "looking counts no start");
    }
  }

  private static JsonNode sendOne(PseudoTerminal bench, ServiceUnderTest service) throws Exception {
    for (int tries = 0; !bench.hasListener() && tries < 1000; tries++) {
      Thread.sleep(10);
    }
    bench.write(Octets.ofText("\r\n"));
    bench.write(Octets.ofText("1200.0,15.0\r\n"));
    return service.await("/api/v1/points/bench", p -> p.path("state").asText().equals("reading"));
  }

  /** The test's service took a free port; the file must name one that is free now. */
  private void useThePortNobodyListensOn() throws Exception {
    Path file = folder.resolve("feedwitness.toml");
    int free;
    try (java.net.ServerSocket socket =
        new java.net.ServerSocket(0, 1, java.net.InetAddress.getLoopbackAddress())) {
      free = socket.getLocalPort();
    }
    Files.writeString(file, Files.readString(file).replace("127.0.0.1:0", "127.0.0.1:" + free));
  }

  @Test
  void saysWhomItAskedInVain() throws Exception {
    Path file = folder.resolve("feedwitness.toml");
    Files.writeString(
        file,
        """
        [nursery]
        name = "Quarry End Nursery"
        zone = "Europe/London"
        [server]
        listen = "127.0.0.1:0"
        """);
    useThePortNobodyListensOn();
    Said said = explain("bench", "now", "--config", file.toString());
    assertEquals(1, said.code(), said.err());
    assertSays(said.err(), "there is no history in " + folder.resolve("feedwitness-data"));
    assertEquals(1, explain("bench", "now", "--url", "http://127.0.0.1:1/").code());
    assertEquals(2, explain("bench", "yesterday", "--config", file.toString()).code());
    assertEquals(2, explain("Bench!", "--config", file.toString()).code());
  }

  @Test
  void readsTimesAsPeopleTypeThem() {
    Instant now = Instant.parse("2026-06-02T09:30:00Z");
    ZoneId london = ZoneId.of("Europe/London");
    assertEquals(Optional.of(now), MomentText.read("now", now, london));
    for (String same :
        new String[] {
          "10:05",
          "10:05:00",
          "2026-06-02 10:05",
          "2026-06-02T10:05:00",
          "2026-06-02T09:05:00Z",
          "2026-06-02T11:05:00+02:00"
        }) {
      assertEquals(
          Optional.of(Instant.parse("2026-06-02T09:05:00Z")), MomentText.read(same, now, london));
    }
    assertEquals(Optional.empty(), MomentText.read("10 past", now, london));
  }

  private static String point(Object port) {
    return """
        [[point]]
        name = "bench"
        title = "Bench"
        place = "other"
        port = "%s"
        profile = "pushed-csv"
        compensation = "linear"
        """
        .formatted(port);
  }
}
