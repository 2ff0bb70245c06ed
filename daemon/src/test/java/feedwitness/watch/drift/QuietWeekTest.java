package feedwitness.watch.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.simulate.Schedule;
import feedwitness.watch.drift.DriftFinding.Kind;
import feedwitness.watch.drift.DriftFinding.Stage;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A week at full signal in which nothing is wrong with the injector. */
class QuietWeekTest {
  private final NurseryWeek week =
      new NurseryWeek(21, Schedule.quiet(), NurseryWeek.glasshouse(List.of(0.80, 1.50, 1.95)));

  @Test
  void whatHelpersDoToTheProbeIsNoInjectorDrift() {
    week.until(NurseryWeek.local(12, 10, 2));
    week.nursery().begin("line in-standard +25m 2.77mS/cm"); // taken out and hung in a bucket
    week.until(NurseryWeek.local(12, 14, 0));
    week.nursery().begin("line in-air +10m");
    week.until(NurseryWeek.local(13, 9, 0));
    week.nursery().begin("bus unplug +3h");
    week.until(NurseryWeek.local(13, 20, 0));
    week.nursery().begin("source silence +2d");
    week.until(NurseryWeek.local(16, 0, 0));

    List<DriftFinding> told =
        week.findings().stream().filter(f -> f.stage().compareTo(Stage.NOTICE) >= 0).toList();
    assertEquals(List.of(Kind.PLAIN_WATER), told.stream().map(DriftFinding::kind).toList());
    assertTrue(told.get(0).detected().isAfter(NurseryWeek.local(15, 6, 0)), "it is Sunday's flush");
    assertEquals(DriftStanding.Phase.NORMAL, week.watch().standing().phase());
  }
}
