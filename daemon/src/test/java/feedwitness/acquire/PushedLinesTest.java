package feedwitness.acquire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.Octets;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.simulate.PseudoTerminal;
import feedwitness.wire.PortOpener;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** An instrument that sends by itself, on a real pseudo-terminal. */
@Timeout(60)
class PushedLinesTest {
  private static final Duration INTERVAL = Duration.ofMillis(200);

  @TempDir Path folder;

  @Test
  void handsOnWhatTheInstrumentSaidUntouched() throws Exception {
    try (PseudoTerminal instrument = PseudoTerminal.open();
        Bench bench = new Bench(Bench.pushed(link(instrument.slavePath()), INTERVAL))) {
      say(instrument, "351.2,12.41\r\n", "352.0,12.40\r\n", "353.9,12.40\r\n");
      Indication indication = bench.nextIndication();
      assertEquals(12.4, indication.reading().temperature(), 0.02);
      assertTrue(Set.of(351.2, 352.0, 353.9).contains(indication.reading().conductivity()));
    }
  }

  @Test
  void readsThroughAnUnpluggedCable() throws Exception {
    Path stable = folder.resolve("source");
    PseudoTerminal before = PseudoTerminal.open();
    Files.createSymbolicLink(stable, before.slavePath());
    try (Bench bench = new Bench(Bench.pushed(link(stable), INTERVAL))) {
      say(before, "351.2,12.41\r\n", "351.2,12.41\r\n", "351.2,12.41\r\n");
      bench.nextIndication();
      Files.delete(stable);
      before.close();
      Missing missing = bench.nextMissing();
      assertEquals(Missing.Cause.CABLE_PULLED, missing.cause());
      assertTrue(missing.detail().contains(stable.toString()), missing.detail());
      try (PseudoTerminal after = PseudoTerminal.open()) {
        Files.createSymbolicLink(stable, after.slavePath());
        say(after, "402.5,13.00\r\n", "402.5,13.00\r\n", "402.5,13.00\r\n");
        Indication again = bench.nextIndication();
        while (again.reading().conductivity() != 402.5) {
          again = bench.nextIndication();
        }
      }
    }
  }

  @Test
  void reportsAnInstrumentThatFallsSilent() throws Exception {
    try (PseudoTerminal instrument = PseudoTerminal.open();
        Bench bench = new Bench(Bench.pushed(link(instrument.slavePath()), INTERVAL))) {
      say(instrument, "351.2,12.41\r\n", "351.2,12.41\r\n");
      bench.nextIndication();
      Missing missing = bench.nextMissing();
      assertEquals(Missing.Cause.SILENT, missing.cause());
      say(instrument, "351.2,12.41\r\n");
      bench.nextIndication();
    }
  }

  @Test
  void namesAWrongBaudRateInsteadOfGuessing() throws Exception {
    try (PseudoTerminal instrument = PseudoTerminal.open();
        Bench bench = new Bench(Bench.pushed(link(instrument.slavePath()), INTERVAL))) {
      Thread noise =
          new Thread(
              () -> {
                try {
                  for (int i = 0; i < 200; i++) {
                    instrument.write(Octets.ofHex("f8 80 e0 1c 0a fe 78 9c c0 0a"));
                    Thread.sleep(50);
                  }
                } catch (Exception e) {
                  Thread.currentThread().interrupt();
                }
              });
      noise.start();
      Missing missing = bench.nextMissing();
      assertEquals(Missing.Cause.UNREADABLE, missing.cause());
      assertTrue(missing.detail().contains("baud"), missing.detail());
      noise.interrupt();
      noise.join();
    }
  }

  @Test
  void saysWhichPortIsNotThereAndStartsWhenItComes() throws Exception {
    Path stable = folder.resolve("later");
    try (Bench bench = new Bench(Bench.pushed(link(stable), INTERVAL))) {
      assertEquals(Missing.Cause.NO_SUCH_PORT, bench.nextMissing().cause());
      try (PseudoTerminal instrument = PseudoTerminal.open()) {
        Files.createSymbolicLink(stable, instrument.slavePath());
        say(instrument, "351.2,12.41\r\n", "351.2,12.41\r\n", "351.2,12.41\r\n");
        bench.nextIndication();
      }
    }
  }

  @Test
  void saysThatAnotherProgramHasThePort() throws Exception {
    PortOpener taken =
        (link, settings) ->
            new PortOpener.Outcome.Refused(PortOpener.Why.TAKEN, link.text() + " is in use");
    try (Bench bench = new Bench(Bench.pushed(link(folder.resolve("x")), INTERVAL), taken)) {
      assertEquals(Missing.Cause.PORT_TAKEN, bench.nextMissing().cause());
    }
  }

  private static LinkAddress link(Path path) {
    return new LinkAddress.Serial(path.toString());
  }

  /** Waits until somebody listens, then sends line by line. */
  private static void say(PseudoTerminal instrument, String... lines) throws Exception {
    for (int tries = 0; !instrument.hasListener() && tries < 1000; tries++) {
      Thread.sleep(10);
    }
    for (String line : lines) {
      Thread.sleep(60);
      instrument.write(Octets.ofText(line));
    }
  }
}
