package feedwitness.simulate;

import feedwitness.quantity.TimeSource;
import java.time.Duration;
import java.time.Instant;

/**
 * Clocks of a world that runs {@code speed} times as fast as ours, from a chosen instant. Both
 * clocks are scaled, so intervals judged by either agree with the nursery. A clock that waits runs
 * slower while its instruments are read too rarely: a busy machine then makes the world slow rather
 * than its readings sparse. Never goes back, never blocks. Free to cross threads.
 */
public final class SimulatedClock implements TimeSource {
  /** A reader that says nothing for so long (real time) is not waited for. */
  private static final long PATIENCE_NANOS = Duration.ofSeconds(2).toNanos();

  private final TimeSource real;
  private final Instant start;
  private final double speed;
  private final long leadNanos;
  private long realNanos;
  private double nanos;
  private double heardNanos;
  private long heardRealNanos;

  /**
   * Waits for nobody.
   *
   * @param real the clocks of the machine; only its monotonic clock is read
   * @param start the simulated instant of this call
   * @param speed simulated seconds per real second, 0.1 to 100 000
   */
  public SimulatedClock(TimeSource real, Instant start, double speed) {
    this(real, start, speed, Duration.ofNanos(Long.MAX_VALUE));
  }

  private SimulatedClock(TimeSource real, Instant start, double speed, Duration lead) {
    if (!(speed >= 0.1 && speed <= 100_000)) {
      throw new IllegalArgumentException(
          "speed %s is outside 0.1 to 100000 simulated seconds a second".formatted(speed));
    }
    this.real = real;
    this.start = start;
    this.speed = speed;
    this.leadNanos = lead.toNanos();
    this.realNanos = real.monotonicNanos();
    this.heardRealNanos = realNanos;
  }

  /**
   * Waits for its instruments to be read.
   *
   * @param speed simulated seconds per real second at most
   * @param lead how far it runs on after an instrument was read, simulated
   */
  public static SimulatedClock waiting(
      TimeSource real, Instant start, double speed, Duration lead) {
    return new SimulatedClock(real, start, speed, lead);
  }

  /** Simulated seconds per real second, at most. */
  public double speed() {
    return speed;
  }

  /** An instrument was read, or there is none to be read. */
  synchronized void heard() {
    heardNanos = monotonicNanos();
    heardRealNanos = realNanos;
  }

  /** Simulated nanoseconds since the start. */
  @Override
  public synchronized long monotonicNanos() {
    long now = real.monotonicNanos();
    double free = nanos + (now - realNanos) * speed;
    boolean waits = now - heardRealNanos < PATIENCE_NANOS;
    nanos = waits ? Math.max(nanos, Math.min(free, heardNanos + leadNanos)) : free;
    realNanos = now;
    return (long) nanos;
  }

  @Override
  public Instant wall() {
    return start.plusNanos(monotonicNanos());
  }
}
