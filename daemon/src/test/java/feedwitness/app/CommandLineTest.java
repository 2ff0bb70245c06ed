package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.Octets;
import feedwitness.simulate.PseudoTerminal;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** The command line as a person uses it. */
@Timeout(60)
class CommandLineTest {
  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... words) {
    CommandLine line = Main.commandLine();
    line.setOut(new PrintWriter(out, true));
    line.setErr(new PrintWriter(err, true));
    return line.execute(words);
  }

  @Test
  void namesEveryFaultOfAConfigurationWithItsPlaceAndEndsWithTwo() throws Exception {
    Path file =
        Files.writeString(
            folder.resolve("faulty.toml"),
            """
            [nursery]
            name = "Quarry End Nursery"
            zone = "Europe/Atlantis"
            [[point]]
            name = "tank"
            place = "tank"
            port = "/dev/ttyUSB0"
            profile = "modbus-flaot"
            unit = 11
            colour = "green"
            """);
    assertEquals(2, run("check-config", "--config", file.toString()));
    assertTrue(err.toString().contains("faulty.toml:3:"), err::toString);
    assertTrue(err.toString().contains("modbus-flaot"), err::toString);
    assertTrue(err.toString().contains("colour"), err::toString);
  }

  @Test
  void refusesToStartOnAFaultyConfiguration() throws Exception {
    Path file = Files.writeString(folder.resolve("faulty.toml"), "[nursery]\nname = 3\n");
    assertEquals(2, run("run", "--config", file.toString()));
    assertTrue(err.toString().contains("nothing was started"), err::toString);
  }

  @Test
  void saysWhatAGoodConfigurationMeans() throws Exception {
    Path file =
        Files.writeString(
            folder.resolve("good.toml"),
            """
            [nursery]
            name = "Quarry End Nursery"
            zone = "Europe/London"
            [[point]]
            name = "tank"
            place = "tank"
            port = "/dev/serial/by-id/usb-bus"
            profile = "modbus-float"
            unit = 11
            """);
    assertEquals(0, run("check-config", "--config", file.toString()));
    assertTrue(
        out.toString().contains("modbus-float on /dev/serial/by-id/usb-bus, unit 11"),
        out::toString);
  }

  @Test
  void listensToAnInstrumentAndShowsOctetsAndReadings() throws Exception {
    try (PseudoTerminal instrument = PseudoTerminal.open()) {
      Thread speech =
          new Thread(
              () -> {
                try {
                  for (int i = 0; i < 100; i++) {
                    instrument.write(Octets.ofText(i % 3 == 2 ? "3#1.2\r\n" : "351.2,12.41\r\n"));
                    Thread.sleep(100);
                  }
                } catch (Exception e) {
                  Thread.currentThread().interrupt();
                }
              });
      speech.start();
      assertEquals(
          0,
          run(
              "listen",
              instrument.slavePath().toString(),
              "--profile",
              "pushed-csv",
              "--for",
              "3s"));
      speech.interrupt();
      speech.join();
    }
    assertTrue(out.toString().contains("33 35 31 2e 32 2c 31 32 2e 34 31 0d 0a"), out::toString);
    assertTrue(out.toString().contains("= 351.2 µS/cm, 12.41 °C"), out::toString);
    assertTrue(out.toString().contains("not understood: "), out::toString);
  }

  @Test
  void namesTheProfilesThereAreWhenOneIsUnknown() {
    assertEquals(2, run("listen", "/dev/null", "--profile", "nonesuch"));
    assertTrue(err.toString().contains("pushed-csv"), err::toString);
  }

  @Test
  void listsPorts() {
    assertEquals(0, run("ports"));
    assertTrue(!out.toString().isBlank());
  }

  @Test
  void saysItsVersionAndHelps() {
    assertEquals(0, run("--version"));
    assertEquals(0, run("--help"));
    assertTrue(out.toString().contains("demo"), out::toString);
  }
}
