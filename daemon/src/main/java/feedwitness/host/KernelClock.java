package feedwitness.host;

import com.sun.jna.LastErrorException;
import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.tinylog.Logger;

/**
 * Asks the kernel whether its clock is synchronised, by {@code adjtimex} with nothing to change
 * (adjtimex(2)): its return value alone says it, whatever the layout of the structure.
 */
final class KernelClock implements Supplier<SynchronisedClock.Kernel> {
  /** Return value for a clock nobody has set. */
  private static final int TIME_ERROR = 5;

  /** More than {@code struct timex} has on any Linux; all zero means: change nothing. */
  private static final int TIMEX_OCTETS = 512;

  private final @Nullable LibC libC = load();

  /** The one call. */
  interface LibC extends Library {
    int adjtimex(Memory timex) throws LastErrorException;
  }

  private static @Nullable LibC load() {
    try {
      return Native.load("c", LibC.class);
    } catch (UnsatisfiedLinkError | NoClassDefFoundError e) {
      Logger.warn("clock: the kernel cannot be asked ({}); the time service still can", e);
      return null;
    }
  }

  @Override
  public SynchronisedClock.Kernel get() {
    LibC own = libC;
    if (own == null) {
      return SynchronisedClock.Kernel.SILENT;
    }
    try (Memory timex = new Memory(TIMEX_OCTETS)) {
      timex.clear();
      int state = own.adjtimex(timex);
      return state >= 0 && state < TIME_ERROR
          ? SynchronisedClock.Kernel.SYNCHRONISED
          : SynchronisedClock.Kernel.NOT_SYNCHRONISED;
    } catch (LastErrorException e) {
      return SynchronisedClock.Kernel.SILENT;
    }
  }
}
