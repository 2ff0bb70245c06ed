package feedwitness.acquire;

import feedwitness.quantity.TimeSource;
import java.time.Instant;

/**
 * Stands still between the events of a tape, live and in replay: only so can what a session does be
 * the same both times. Set by one thread at a time, read by any.
 */
final class TapeClock implements TimeSource {
  private volatile Moment now;

  private record Moment(long nanos, long wallMillis) {}

  TapeClock(long wallMillis) {
    this.now = new Moment(0, wallMillis);
  }

  void set(long nanos, long wallMillis) {
    now = new Moment(nanos, wallMillis);
  }

  @Override
  public long monotonicNanos() {
    return now.nanos();
  }

  @Override
  public Instant wall() {
    return Instant.ofEpochMilli(now.wallMillis());
  }
}
