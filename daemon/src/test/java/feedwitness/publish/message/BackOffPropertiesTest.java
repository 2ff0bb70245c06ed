package feedwitness.publish.message;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class BackOffPropertiesTest {
  @Property(tries = 300)
  void theWaitGrowsAndStaysWithinItsBounds(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 100_000) int failures) {
    Duration wait = new BackOff(new SplittableRandom(seed)).after(failures);
    Duration full = BackOff.FIRST.multipliedBy(1L << Math.min(6, failures - 1));
    Duration bound = full.compareTo(BackOff.LONGEST) > 0 ? BackOff.LONGEST : full;
    assertTrue(wait.compareTo(bound) <= 0, wait::toString);
    assertTrue(wait.compareTo(bound.dividedBy(2)) >= 0, wait::toString);
  }
}
