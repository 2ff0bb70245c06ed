package feedwitness.store;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Locale;
import java.util.function.LongSupplier;

/**
 * The room that must be left on the disk: a full one would make the database fail in the middle of
 * a write.
 */
final class Floor {
  private static final double MEGA = 1e6;

  private final Path file;
  private final long octets;
  private final LongSupplier free;

  /**
   * @param free octets the disk has free
   */
  Floor(Path file, long octets, LongSupplier free) {
    this.file = file;
    this.octets = octets;
    this.free = free;
  }

  /** There is too little room. */
  static final class Reached extends SQLException {
    private static final long serialVersionUID = 1;

    Reached(String words) {
      super(words);
    }
  }

  void check() throws Reached {
    long left = octets == 0 ? Long.MAX_VALUE : free.getAsLong();
    if (left < octets) {
      throw new Reached(
          String.format(
              Locale.ROOT,
              "history: nothing is recorded, because the disk of %s has %.1f MB free, less than the"
                  + " floor of %.1f MB (store.free-floor); make room there, recording resumes by"
                  + " itself",
              file,
              left / MEGA,
              octets / MEGA));
    }
  }
}
