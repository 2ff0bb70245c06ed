package feedwitness.simulate;

import static feedwitness.simulate.Nurseries.MONDAY;
import static feedwitness.simulate.Nurseries.local;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.solution.KclStandard;
import org.junit.jupiter.api.Test;

/** The week worth showing, day by day. */
class WeekTest {
  private final Nursery nursery = Nurseries.with(7, Schedule.week(), MONDAY);

  private Truth at(int day, int hour, int minute) {
    nursery.advanceTo(local(day, hour, minute));
    return nursery.truth();
  }

  private static double errorPercent(Truth truth, double standard) {
    double shown = truth.tank().indicated() / KclStandard.ratio(Probe.STANDARD_CELSIUS);
    return (shown / standard - 1) * 100;
  }

  @Test
  void happensAsTold() {
    assertEquals(1.5, at(16, 10, 0).tank().at25(), 0.05);

    at(17, 14, 10);
    assertEquals(0.88, Nurseries.watering(nursery).feed().injectedShare(), 0.03);

    assertTrue(at(18, 9, 0).line().sensitivity() > 0.98);
    assertTrue(at(18, 15, 30).line().sensitivity() < 0.87);
    assertTrue(at(18, 16, 31).line().sensitivity() > 0.99);

    double before = at(19, 11, 19).tank().at25();
    assertTrue(at(19, 13, 0).tank().at25() < before - 0.1);

    at(20, 12, 30);
    Truth empty = Nurseries.watering(nursery);
    assertEquals(empty.source().at25(), empty.line().at25(), 0.01);
    assertTrue(at(20, 14, 0).feed().barrelLitres() > 150);

    at(21, 9, 15);
    assertTrue(nursery.isUnplugged(Wire.BUS));
    at(21, 9, 30);
    assertFalse(nursery.isUnplugged(Wire.BUS));
    at(21, 13, 35);
    Truth bypassed = Nurseries.watering(nursery);
    assertEquals(bypassed.source().at25(), bypassed.line().at25(), 0.01);
  }

  @Test
  void endsWithACheckThatFindsCleansAndAdjusts() {
    double low = errorPercent(at(22, 10, 5), 1.413);
    double high = errorPercent(at(22, 10, 13), 2.77);
    assertEquals(-4.6, (low + high) / 2, 0.6);
    low = errorPercent(at(22, 10, 31), 1.413);
    high = errorPercent(at(22, 10, 39), 2.77);
    assertEquals(-2.1, (low + high) / 2, 0.6);
    assertEquals(0.998, at(22, 10, 43).tank().sensitivity(), 1e-4);
    assertEquals(-0.2, errorPercent(at(22, 10, 49), 1.413), 0.8);
  }

  @Test
  void comesBackEveryWeek() {
    assertTrue(at(28, 13, 35).faults().contains("bypass"));
  }
}
