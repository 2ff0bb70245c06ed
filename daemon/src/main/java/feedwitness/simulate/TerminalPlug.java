package feedwitness.simulate;

import feedwitness.quantity.Octets;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;
import org.tinylog.Logger;

/**
 * A cable made of pseudo-terminals, with a stable link in a directory as a by-id link is for a USB
 * adapter: gone while unplugged, pointing at another device afterwards.
 */
final class TerminalPlug implements Plug {
  private final Path link;
  private @Nullable PseudoTerminal terminal;

  private TerminalPlug(Path link) {
    this.link = link;
  }

  /** Plugs in under this link; a link left from an earlier run is replaced. */
  static TerminalPlug in(Path link) throws IOException {
    if (Files.exists(link, LinkOption.NOFOLLOW_LINKS) && !Files.isSymbolicLink(link)) {
      throw new IOException(
          link + " exists and is no link; move it away or choose another directory for the ports");
    }
    TerminalPlug plug = new TerminalPlug(link);
    plug.replug();
    return plug;
  }

  @Override
  public String text() {
    return link.toString();
  }

  @Override
  public void send(Octets octets) {
    PseudoTerminal now = terminal();
    if (now != null && now.hasListener()) {
      try {
        now.write(octets);
      } catch (IOException e) {
        Logger.debug("{}: {} octets lost, the cable was pulled", link, octets.length());
      }
    }
  }

  @Override
  public Octets receive(int timeoutMillis) {
    PseudoTerminal now = terminal();
    if (now != null) {
      try {
        return now.read(timeoutMillis);
      } catch (IOException e) {
        Logger.debug("{}: nothing to read, the cable was pulled", link);
      }
    }
    LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(timeoutMillis));
    return Octets.NONE;
  }

  private synchronized @Nullable PseudoTerminal terminal() {
    return terminal;
  }

  @Override
  public synchronized void unplug() {
    if (terminal != null) {
      try {
        Files.deleteIfExists(link);
      } catch (IOException e) {
        Logger.warn("{} cannot be removed ({}); remove it by hand", link, e.getMessage());
      }
      terminal.close();
      terminal = null;
    }
  }

  @Override
  public synchronized void replug() throws IOException {
    if (terminal == null) {
      PseudoTerminal fresh = PseudoTerminal.open();
      try {
        Path aside = link.resolveSibling("." + link.getFileName() + ".new");
        Files.deleteIfExists(aside);
        Files.createSymbolicLink(aside, fresh.slavePath());
        Files.move(
            aside, link, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
      } catch (IOException | RuntimeException e) {
        fresh.close();
        throw e;
      }
      terminal = fresh;
    }
  }

  @Override
  public void close() {
    unplug();
  }
}
