package feedwitness.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Levels a line comes back to, among pulses, noise and changes. */
class UsualLevelsTest {
  private UsualLevels levels = new UsualLevels();
  private final Random random = new Random(5);
  private long second;

  private void stay(double level, int seconds) {
    for (int i = 0; i < seconds; i++) {
      // an injector pulses by 1 % with each stroke, a probe jitters by 0.3 %
      double pulse = 0.01 * Math.sin(2 * Math.PI * second / 7.0);
      double value = level * (1 + pulse + 0.003 * random.nextGaussian());
      levels.add(value, second * 1_000_000_000L);
      second++;
    }
  }

  /** An event of a few minutes: what stood in the pipe, then the strength. */
  private void event(double level) {
    for (int i = 0; i < 40; i++) {
      levels.add(0.46 + (level - 0.46) * i / 40, second * 1_000_000_000L);
      second++;
    }
    stay(level, 300);
    second += 1800;
  }

  private Optional<UsualLevels.Level> question() {
    return levels.question(level -> false);
  }

  @Test
  void asksAboutALevelThatCameThreeTimesAmongOthers() {
    event(1.5);
    event(1.95);
    event(1.5);
    event(1.95);
    assertEquals(Optional.empty(), question());
    event(1.5);
    UsualLevels.Level level = question().orElseThrow();
    assertEquals(1.5, level.milliSiemensPerCm(), 0.02);
    assertEquals(3, level.visits());
  }

  @Test
  void countsALongStayOnceInHalfADay() {
    stay(1.5, 3 * 3600);
    assertEquals(Optional.empty(), question());
    stay(1.5, 25 * 3600);
    assertEquals(3, question().orElseThrow().visits());
  }

  @Test
  void doesNotAskAboutWhatIsKnownOrWasAnswered() {
    for (int i = 0; i < 6; i++) {
      event(i % 2 == 0 ? 1.5 : 1.95);
    }
    assertEquals(
        1.95, levels.question(level -> level < 1.7).orElseThrow().milliSiemensPerCm(), 0.03);
    levels.answered(question().orElseThrow());
    levels.answered(question().orElseThrow());
    event(1.5);
    event(1.95);
    assertEquals(Optional.empty(), question());
  }

  @Test
  void takesNoDriftForALevel() {
    for (int i = 0; i < 20_000; i++) {
      levels.add(0.5 + i * 0.0002, second * 1_000_000_000L);
      second++;
    }
    assertEquals(Optional.empty(), question());
  }

  @Test
  void rememberswhatItKnowsAcrossARestart() {
    event(1.5);
    event(1.95);
    event(1.5);
    event(1.95);
    levels = UsualLevels.parse(levels.toText());
    event(1.5);
    assertTrue(question().isPresent());
    assertThrows(IllegalArgumentException.class, () -> UsualLevels.parse("1.5 2"));
  }
}
