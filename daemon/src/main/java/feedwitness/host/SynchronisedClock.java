package feedwitness.host;

import feedwitness.quantity.TimeSource;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.function.Supplier;
import org.tinylog.Logger;

/**
 * Trusts the wall clock once something has set it: when the time service's marker file is there
 * (systemd-timesyncd touches it after the first synchronisation, and {@code /run} is empty after
 * each start of the machine), or when the kernel calls its clock synchronised (chrony and ntpd tell
 * it so). Looks at most once a second, and no more once trusted.
 */
public final class SynchronisedClock implements ClockTrust {
  /** Of systemd-timesyncd. */
  public static final Path MARKER = Path.of("/run/systemd/timesync/synchronized");

  private static final long LOOK_EVERY_NANOS = Duration.ofSeconds(1).toNanos();

  /** What the kernel says of its clock. */
  public enum Kernel {
    SYNCHRONISED,
    NOT_SYNCHRONISED,
    /** It was not allowed to answer, as under systemd's {@code ProtectClock=}. */
    SILENT
  }

  private final Path marker;
  private final Supplier<Kernel> kernel;
  private final TimeSource time;
  private volatile boolean trusted;
  private long nextLook;

  /** Of this machine. */
  public static SynchronisedClock ofThisMachine(TimeSource time) {
    return new SynchronisedClock(MARKER, new KernelClock(), time);
  }

  /**
   * @param marker a file that is there once the clock is set
   * @param time for the interval between two looks only
   */
  SynchronisedClock(Path marker, Supplier<Kernel> kernel, TimeSource time) {
    this.marker = marker;
    this.kernel = kernel;
    this.time = time;
    this.nextLook = time.monotonicNanos();
  }

  @Override
  public boolean trusted() {
    return trusted || look();
  }

  private synchronized boolean look() {
    long now = time.monotonicNanos();
    if (!trusted && now - nextLook >= 0) {
      nextLook = now + LOOK_EVERY_NANOS;
      trusted = Files.exists(marker) || kernel.get() == Kernel.SYNCHRONISED;
      if (trusted) {
        Logger.info("clock: synchronised, samples are dated from now on");
      }
    }
    return trusted;
  }
}
