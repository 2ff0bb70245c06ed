package feedwitness.simulate;

import feedwitness.quantity.TimeSource;
import java.time.Instant;

/**
 * Clocks of a world that runs {@code speed} times as fast as ours, from a chosen instant. Both
 * clocks are scaled, so intervals judged by either agree with the nursery. Free to cross threads.
 */
public final class SimulatedClock implements TimeSource {
  private final TimeSource real;
  private final Instant start;
  private final double speed;
  private final long realStart;

  /**
   * @param real the clocks of the machine; only its monotonic clock is read
   * @param start the simulated instant of this call
   * @param speed simulated seconds per real second, 0.1 to 100 000
   */
  public SimulatedClock(TimeSource real, Instant start, double speed) {
    if (!(speed >= 0.1 && speed <= 100_000)) {
      throw new IllegalArgumentException(
          "speed %s is outside 0.1 to 100000 simulated seconds a second".formatted(speed));
    }
    this.real = real;
    this.start = start;
    this.speed = speed;
    this.realStart = real.monotonicNanos();
  }

  /** Simulated seconds per real second. */
  public double speed() {
    return speed;
  }

  /** Simulated nanoseconds since the start. */
  @Override
  public long monotonicNanos() {
    return (long) ((real.monotonicNanos() - realStart) * speed);
  }

  @Override
  public Instant wall() {
    return start.plusNanos(monotonicNanos());
  }
}
