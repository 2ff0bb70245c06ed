package feedwitness.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import feedwitness.quantity.TimeSource;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** The demo's clock on a machine that is too busy to read as often as it should. */
class SimulatedClockTest {
  private static final Instant MONDAY = Instant.parse("2026-06-01T05:00:00Z");

  private long real;
  private final TimeSource machine =
      new TimeSource() {
        @Override
        public long monotonicNanos() {
          return real;
        }

        @Override
        public Instant wall() {
          return Instant.EPOCH;
        }
      };

  private void pass(long millis) {
    real += Duration.ofMillis(millis).toNanos();
  }

  private static Instant monday(double seconds) {
    return MONDAY.plusMillis(Math.round(seconds * 1000));
  }

  @Test
  void runsAtItsSpeed() {
    SimulatedClock clock = new SimulatedClock(machine, MONDAY, 240);
    pass(1000);
    assertEquals(monday(240), clock.wall());
  }

  @Test
  void runsAtItsSpeedWhileItsInstrumentsAreReadOftenEnough() {
    SimulatedClock clock = SimulatedClock.waiting(machine, MONDAY, 240, Duration.ofSeconds(5));
    for (int i = 0; i < 50; i++) {
      pass(20);
      clock.heard();
    }
    assertEquals(monday(240), clock.wall());
  }

  @Test
  void waitsForAReaderThatIsLate() {
    SimulatedClock clock = SimulatedClock.waiting(machine, MONDAY, 240, Duration.ofSeconds(5));
    for (int i = 0; i < 10; i++) {
      pass(500);
      assertEquals(monday(5 * (i + 1)), clock.wall());
      clock.heard();
    }
  }

  @Test
  void doesNotStandStillForAReaderThatIsGone() {
    SimulatedClock clock = SimulatedClock.waiting(machine, MONDAY, 240, Duration.ofSeconds(5));
    pass(1500);
    assertEquals(monday(5), clock.wall());
    pass(1000);
    assertEquals(monday(245), clock.wall());
    pass(1000);
    assertEquals(monday(485), clock.wall());
  }
}
