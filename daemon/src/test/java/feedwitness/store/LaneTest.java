package feedwitness.store;

import static feedwitness.store.Nursery.LINE;
import static feedwitness.store.Nursery.MONDAY;
import static feedwitness.store.Nursery.measured;
import static feedwitness.store.Nursery.stamp;
import static org.junit.jupiter.api.Assertions.assertEquals;

import feedwitness.measurement.Measurement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Samples are cut into runs as they come, in whatever order that is. */
class LaneTest {
  private static List<List<String>> cut(List<Measurement> measurements) {
    Lane lane = new Lane();
    measurements.forEach(lane::add);
    return lane.pieces().stream()
        .map(piece -> piece.measurements().stream().map(m -> m.stamp().id()).toList())
        .toList();
  }

  /** Three hours; then the clock is set back by two. */
  private static List<Measurement> fiveHours() {
    List<Measurement> all = new ArrayList<>();
    for (int i = 0; i < 300; i++) {
      int minute = i < 180 ? i : i - 120;
      all.add(measured(LINE, stamp(1, i + 1, MONDAY.plusSeconds(60L * minute)), 1.5, 20));
    }
    return all;
  }

  @Test
  void anHourThatComesAgainIsARunOfItsOwn() {
    List<List<String>> runs = cut(fiveHours());
    assertEquals(List.of(60, 60, 60, 60, 60), runs.stream().map(List::size).toList());
    assertEquals("1-181", runs.get(3).get(0));
  }

  @Test
  void whatComesOutOfOrderIsPutInOrder() {
    List<Measurement> shuffled = fiveHours();
    Collections.shuffle(shuffled, new Random(7));
    assertEquals(cut(fiveHours()), cut(shuffled));
  }

  @Test
  void aRunIsBounded() {
    List<Measurement> fast = new ArrayList<>();
    for (int i = 0; i <= Run.MAX_SAMPLES; i++) {
      fast.add(measured(LINE, stamp(1, i + 1, MONDAY.plusMillis(i)), 1.5, 20));
    }
    assertEquals(List.of(Run.MAX_SAMPLES, 1), cut(fast).stream().map(List::size).toList());
  }
}
