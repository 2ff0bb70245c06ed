package feedwitness.quantity;

import java.time.Instant;

/** The clocks of the process, injected wherever time is stamped or judged. */
public interface TimeSource {
  /** Nanoseconds of a clock that never goes backwards; arbitrary origin. */
  long monotonicNanos();

  /** The wall clock. */
  Instant wall();

  /** The clocks of the machine. */
  static TimeSource system() {
    return new TimeSource() {
      @Override
      public long monotonicNanos() {
        return System.nanoTime();
      }

      @Override
      public Instant wall() {
        return Instant.now();
      }
    };
  }
}
