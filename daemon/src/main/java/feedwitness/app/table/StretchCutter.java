package feedwitness.app.table;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Cuts the readings of a table into stretches: a new one begins where time runs backwards, where a
 * clock that was never set was set, and, while it is not set, where the heading comes again, for
 * then the logger was started anew and counts from the beginning.
 */
public final class StretchCutter {
  private final Instant notBefore;
  private @Nullable Stretch current;
  private Instant previous = Instant.MIN;
  private boolean restarted;

  /** {@code notBefore}: a clock that shows an earlier time was never set. */
  public StretchCutter(Instant notBefore) {
    this.notBefore = notBefore;
  }

  /** The heading came again. */
  public void headingAgain() {
    restarted = true;
  }

  /** The stretch that a reading belongs to. */
  public Stretch add(TableRow.Reading reading) {
    boolean set = !reading.time().isBefore(notBefore);
    Stretch before = current;
    boolean cut =
        before == null
            || reading.time().isBefore(previous)
            || set != before.clockSet()
            || (restarted && !set);
    restarted = false;
    previous = reading.time();
    if (before == null || cut) {
      before =
          new Stretch(
              before == null ? 1 : before.number() + 1, reading.line(), reading.time(), set);
      current = before;
    }
    return before;
  }
}
