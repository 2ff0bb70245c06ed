package feedwitness.simulate;

import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Platform;
import feedwitness.quantity.Octets;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.ReadWriteLock;
import java.util.concurrent.locks.ReentrantReadWriteLock;

/**
 * A serial port that exists only in the kernel: we hold the instrument's end (the master), anyone
 * may open {@link #slavePath()} as if it were a serial adapter. Raw from the start: no echo, no
 * translation of line ends. Closing it is pulling the cable.
 *
 * <p>One thread may read while another writes; any thread may close. Linux only; elsewhere {@link
 * #open()} throws.
 */
public final class PseudoTerminal implements AutoCloseable {
  /** How long a close may have to wait for a reader, and how often an idle line looks again. */
  private static final int SLICE_MILLIS = 20;

  private final LibC libc;
  private final int master;
  private final Path slave;
  private final ReadWriteLock use = new ReentrantReadWriteLock(true);
  private boolean closed;

  private PseudoTerminal(LibC libc, int master, Path slave) {
    this.libc = libc;
    this.master = master;
    this.slave = slave;
  }

  /**
   * Makes a new pseudo-terminal in raw mode.
   *
   * @throws IOException where the system has none or refuses, saying which call failed
   */
  public static PseudoTerminal open() throws IOException {
    if (!Platform.isLinux()) {
      throw new IOException("no pseudo-terminals here: this is not Linux; use TCP ports instead");
    }
    LibC libc;
    try {
      libc = Native.load("c", LibC.class);
    } catch (UnsatisfiedLinkError e) {
      throw new IOException(
          "the C library cannot be reached: " + e.getMessage() + "; use TCP ports instead", e);
    }
    int master = libc.posix_openpt(LibC.O_RDWR | LibC.O_NOCTTY | LibC.O_NONBLOCK | LibC.O_CLOEXEC);
    if (master < 0) {
      throw failed("posix_openpt");
    }
    try {
      return prepare(libc, master);
    } catch (IOException | RuntimeException e) {
      libc.close(master);
      throw e;
    }
  }

  private static PseudoTerminal prepare(LibC libc, int master) throws IOException {
    check(libc.grantpt(master), "grantpt");
    check(libc.unlockpt(master), "unlockpt");
    byte[] name = new byte[128];
    check(libc.ptsname_r(master, name, new NativeLong(name.length)), "ptsname_r");
    String path = Native.toString(name);
    // Opened and closed once: from then on poll says whether anybody has the slave open.
    int slave = libc.open(path, LibC.O_RDWR | LibC.O_NOCTTY | LibC.O_CLOEXEC);
    check(slave, "open of " + path);
    try (Memory termios = new Memory(LibC.TERMIOS_OCTETS)) {
      check(libc.tcgetattr(slave, termios), "tcgetattr");
      libc.cfmakeraw(termios);
      check(libc.tcsetattr(slave, 0, termios), "tcsetattr");
    } finally {
      libc.close(slave);
    }
    return new PseudoTerminal(libc, master, Path.of(path));
  }

  private static void check(int result, String call) throws IOException {
    if (result != 0 && !(result > 0 && call.startsWith("open"))) {
      throw failed(call);
    }
  }

  private static IOException failed(String call) {
    return new IOException(
        "pseudo-terminal: %s failed with error %d; use TCP ports instead"
            .formatted(call, Native.getLastError()));
  }

  /** The device others open, for example {@code /dev/pts/7}. */
  public Path slavePath() {
    return slave;
  }

  /** Whether somebody has the slave open at this moment; false once closed. */
  public boolean hasListener() {
    Lock shared = use.readLock();
    shared.lock();
    try {
      return !closed && (events(0) & LibC.POLLHUP) == 0;
    } finally {
      shared.unlock();
    }
  }

  /**
   * What was written to the slave, as soon as there is any, at most 4096 octets.
   *
   * @param timeoutMillis how long to wait at most, 0 or more
   * @return empty if nothing came in time, also while nobody has the slave open
   * @throws IOException once this end is closed
   */
  public Octets read(int timeoutMillis) throws IOException {
    long deadline = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(timeoutMillis);
    byte[] buffer = new byte[4096];
    while (true) {
      long left = TimeUnit.NANOSECONDS.toMillis(deadline - System.nanoTime());
      int slice = (int) Math.max(0, Math.min(left, SLICE_MILLIS));
      int got = readOnce(buffer, slice);
      if (got > 0) {
        return Octets.of(buffer, 0, got);
      }
      if (deadline - System.nanoTime() <= 0) {
        return Octets.NONE;
      }
    }
  }

  /** Octets read, or 0 after waiting for about {@code slice} milliseconds. */
  private int readOnce(byte[] buffer, int slice) throws IOException {
    Lock shared = use.readLock();
    shared.lock();
    try {
      if (closed) {
        throw new IOException(slave + " is closed on the instrument's side");
      }
      int events = events(slice);
      if ((events & LibC.POLLIN) != 0) {
        int got = libc.read(master, buffer, new NativeLong(buffer.length)).intValue();
        if (got >= 0 || isPassing(Native.getLastError())) {
          return Math.max(0, got);
        }
        throw failed("read");
      }
      if ((events & LibC.POLLHUP) == 0) {
        return 0; // poll has waited
      }
    } finally {
      shared.unlock();
    }
    pause(slice); // nobody at the other end: poll returned at once
    return 0;
  }

  /**
   * Sends octets to whoever has the slave open. As on a real wire nobody is waited for: what does
   * not fit the kernel's buffer (about 4 kB unread) is lost.
   *
   * @return how many octets went in
   * @throws IOException once this end is closed
   */
  public int write(Octets octets) throws IOException {
    byte[] rest = octets.toArray();
    int written = 0;
    Lock shared = use.readLock();
    shared.lock();
    try {
      if (closed) {
        throw new IOException(slave + " is closed on the instrument's side");
      }
      while (rest.length > 0) {
        int sent = libc.write(master, rest, new NativeLong(rest.length)).intValue();
        if (sent < 0 && Native.getLastError() == LibC.EINTR) {
          continue;
        }
        if (sent <= 0) {
          return written;
        }
        written += sent;
        rest = Arrays.copyOfRange(rest, sent, rest.length);
      }
      return written;
    } finally {
      shared.unlock();
    }
  }

  /** Pulls the cable: the slave's readers get an error or end of file, the device disappears. */
  @Override
  public void close() {
    Lock alone = use.writeLock();
    alone.lock();
    try {
      if (!closed) {
        closed = true;
        libc.close(master);
      }
    } finally {
      alone.unlock();
    }
  }

  private int events(int timeoutMillis) {
    try (Memory fds = new Memory(8)) {
      fds.setInt(0, master);
      fds.setShort(4, LibC.POLLIN);
      fds.setShort(6, (short) 0);
      int ready = libc.poll(fds, new NativeLong(1), timeoutMillis);
      return ready > 0 ? fds.getShort(6) : 0;
    }
  }

  private static boolean isPassing(int error) {
    return error == LibC.EINTR || error == LibC.EAGAIN || error == LibC.EIO;
  }

  private static void pause(int millis) {
    try {
      Thread.sleep(Math.max(1, millis));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
