package feedwitness.simulate;

import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.NativeLong;
import com.sun.jna.Pointer;

/**
 * The few calls of the C library a pseudo-terminal needs, with the constants of Linux (the same on
 * x86 and ARM). Every call returns −1 or an error number on failure.
 */
interface LibC extends Library {
  int O_RDWR = 0x2;
  int O_NOCTTY = 0x100;
  int O_NONBLOCK = 0x800;
  int O_CLOEXEC = 0x80000;

  int EINTR = 4;
  int EIO = 5;
  int EAGAIN = 11;

  short POLLIN = 0x1;
  short POLLHUP = 0x10;

  /** Generously more than any {@code struct termios}. */
  int TERMIOS_OCTETS = 256;

  int posix_openpt(int flags);

  int grantpt(int fd);

  int unlockpt(int fd);

  int ptsname_r(int fd, byte[] name, NativeLong length);

  int open(String path, int flags);

  int close(int fd);

  NativeLong read(int fd, byte[] octets, NativeLong length);

  NativeLong write(int fd, byte[] octets, NativeLong length);

  /** {@code fds}: fd (int), events (short), revents (short). */
  int poll(Pointer fds, NativeLong count, int timeoutMillis);

  int tcgetattr(int fd, Memory termios);

  int tcsetattr(int fd, int when, Memory termios);

  void cfmakeraw(Memory termios);
}
