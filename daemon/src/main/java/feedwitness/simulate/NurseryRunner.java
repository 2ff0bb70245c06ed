package feedwitness.simulate;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.tinylog.Logger;

/** Puts a nursery on real ports. */
public final class NurseryRunner {
  private NurseryRunner() {}

  /**
   * On pseudo-terminals with links {@code source} and {@code bus} in a directory; where the system
   * has none, on TCP ports of the loopback address.
   *
   * @param model owned by the runner from now on
   * @param clock what the nursery follows
   * @param portDirectory made if missing
   * @throws IOException if the directory cannot be used or no port can be had
   */
  public static RunningNursery start(Nursery model, SimulatedClock clock, Path portDirectory)
      throws IOException {
    Path directory = portDirectory.toAbsolutePath().normalize();
    Files.createDirectories(directory);
    if (!hasTerminals()) {
      return startOnTcp(model, clock);
    }
    Plug source = TerminalPlug.in(directory.resolve(Wire.SOURCE.text()));
    try {
      return new RunningNursery(
          model, clock, source, TerminalPlug.in(directory.resolve(Wire.BUS.text())));
    } catch (IOException e) {
      source.close();
      throw e;
    }
  }

  /**
   * On TCP ports of the loopback address, as TCP serial servers.
   *
   * @throws IOException if no port can be had
   */
  public static RunningNursery startOnTcp(Nursery model, SimulatedClock clock) throws IOException {
    Plug source = TcpPlug.in();
    try {
      return new RunningNursery(model, clock, source, TcpPlug.in());
    } catch (IOException e) {
      source.close();
      throw e;
    }
  }

  private static boolean hasTerminals() {
    try (PseudoTerminal probe = PseudoTerminal.open()) {
      return Files.exists(probe.slavePath());
    } catch (IOException e) {
      Logger.info("the nursery's instruments are on TCP ports: {}", e.getMessage());
      return false;
    }
  }
}
