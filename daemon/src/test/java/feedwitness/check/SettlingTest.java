package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** When readings in a beaker have come to rest. */
class SettlingTest {
  private static final double RESOLUTION = 0.001;

  /** Second at which it was at rest; −1 if never. */
  private static int rests(IntToDoubleFunction value, int everySeconds, int until) {
    Settling settling = Settling.begin(RESOLUTION, 0.5);
    for (int second = 0; second <= until; second += everySeconds) {
      settling = settling.with(new Settling.Reading(second, value.applyAsDouble(second), 21));
      if (settling.state() instanceof Settling.Settled) {
        return second;
      }
    }
    return -1;
  }

  private static double rounded(double value) {
    return Math.round(value / RESOLUTION) * RESOLUTION;
  }

  @Test
  void takesAMinuteOfReadingsAtLeast() {
    assertEquals(60, rests(s -> 1.413, 1, 600));
    assertEquals(180, rests(s -> 1.413, 20, 600));
  }

  @Test
  void waitsForASlowProbe() {
    int fast = rests(s -> rounded(1.413 * (1 - Math.exp(-s / 8.0))), 1, 900);
    int slow = rests(s -> rounded(1.413 * (1 - Math.exp(-s / 60.0))), 1, 900);
    assertTrue(fast >= 60 && fast < 140, "fast " + fast);
    assertTrue(slow > 250 && slow < 600, "slow " + slow);
  }

  @Test
  void isNotTakenInByASlowDrift() {
    assertEquals(-1, rests(s -> 1.413 * (1 + 0.0001 * s), 1, 600));
  }

  @Test
  void bearsTheNoiseOfTheInstrument() {
    Random random = new Random(4);
    int at = rests(s -> rounded(1.413 * (1 + 0.003 * random.nextGaussian())), 1, 600);
    assertTrue(at >= 60 && at <= 300, "at " + at);
  }

  @Test
  void saysThatABubbleMakesItUnsteady() {
    Settling settling = Settling.begin(RESOLUTION, 0.5);
    Random random = new Random(5);
    for (int s = 0; s < 120; s++) {
      settling =
          settling.with(
              new Settling.Reading(s, 1.4 * (1 - 0.1 * Math.abs(random.nextGaussian())), 21));
    }
    assertInstanceOf(Settling.Unsteady.class, settling.state());
    assertTrue(SettlingWords.of(settling.state()).contains("shake bubbles off"));
  }

  @Test
  void waitsForTheTemperatureAsWell() {
    Settling settling = Settling.begin(RESOLUTION, 0.5);
    for (int s = 0; s <= 120; s++) {
      settling = settling.with(new Settling.Reading(s, 1.4, 15 + s / 60.0));
    }
    Settling.Moving moving = assertInstanceOf(Settling.Moving.class, settling.state());
    assertEquals(1, moving.kelvinPerMinute(), 0.01);
  }

  @Test
  void bearsATemperatureThatIsMissingNowAndThen() {
    Settling settling = Settling.begin(RESOLUTION, 0.5);
    for (int s = 0; s <= 60; s++) {
      settling = settling.with(new Settling.Reading(s, 1.4, s % 5 == 0 ? Double.NaN : 21));
    }
    assertEquals(21, assertInstanceOf(Settling.Settled.class, settling.state()).celsius(), 1e-9);
  }

  /** Noise alone must not pass for rest where the level still moves by more than is allowed. */
  @Test
  void seldomTakesMovementForRest() {
    int wrong = 0;
    for (int seed = 0; seed < 200; seed++) {
      Random random = new Random(seed);
      // 1 % a minute: four times what is allowed across a window of one minute.
      int at = rests(s -> 1.4 * (1 + s * 0.01 / 60 + 0.002 * random.nextGaussian()), 2, 300);
      wrong += at >= 0 ? 1 : 0;
    }
    assertEquals(0, wrong);
  }
}
