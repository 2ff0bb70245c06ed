package feedwitness.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quality.Neighbours.Probe;
import org.junit.jupiter.api.Test;

/** Which probes are in the same water, and what they say of each other. */
class NeighboursTest {
  private static final int DAY = 24 * 60;

  private final Neighbours neighbours = new Neighbours();
  private final Probe tank = neighbours.join();
  private final Probe second = neighbours.join();
  private int minute;

  private static double water(int minute) {
    return 16 + 4 * Math.sin(minute / 1440.0 * 2 * Math.PI);
  }

  private double seconds() {
    return minute * 60.0;
  }

  private void days(double days, double apart) {
    for (int i = 0; i < days * DAY; i++) {
      tank.heard(seconds(), water(minute));
      second.heard(seconds(), water(minute) + apart);
      minute++;
    }
  }

  private boolean together() {
    return !Double.isNaN(tank.neighbour(seconds(), water(minute)));
  }

  @Test
  void areNeighboursAfterADayAndNotBefore() {
    days(0.9, 0.6);
    assertFalse(together());
    days(0.2, 0.6);
    assertEquals(
        water(minute - 1), tank.neighbour(seconds(), 20), 0.01, "less what they differ by");
    assertEquals(water(minute - 1) + 0.6, second.neighbour(seconds(), 20), 0.01);
  }

  @Test
  void areNoNeighboursWhereTheSunWarmsOneOfThem() {
    for (int i = 0; i < 3 * DAY; i++) {
      tank.heard(seconds(), water(minute));
      second.heard(seconds(), 16 + 1.6 * (water(minute) - 16));
      minute++;
      assertFalse(together());
    }
  }

  @Test
  void saysNothingWhereTheWaterNeverChanges() {
    for (int i = 0; i < 3 * DAY; i++) {
      tank.heard(seconds(), 12);
      second.heard(seconds(), 12.3);
      minute++;
      assertFalse(together(), "two wells of one temperature would look the same");
    }
  }

  @Test
  void stayNeighboursWhileOneHasFailedButNotForEver() {
    days(1.2, 0.6);
    days(0.9, 5);
    assertTrue(together());
    assertEquals(5 - 0.6, tank.neighbour(seconds(), 20) - water(minute - 1), 0.01);
    days(0.2, 5);
    assertFalse(together(), "it was moved, it seems");
    days(1.1, 5);
    assertTrue(together(), "as they are now");
    assertEquals(0, tank.neighbour(seconds(), 20) - water(minute - 1), 0.01);
  }

  @Test
  void hearsNothingOfOneThatIsSilentOrNotBelieved() {
    days(1.2, 0);
    minute += 10;
    assertFalse(together());
    second.heard(seconds(), Double.NaN);
    assertFalse(together());
    second.heard(seconds(), water(minute));
    assertTrue(together());
  }

  @Test
  void holdsOfThreeTheOneThatPartedAgainstNoOther() {
    Probe third = neighbours.join();
    for (int i = 0; i < 1.2 * DAY; i++) {
      third.heard(seconds(), water(minute));
      tank.heard(seconds(), water(minute));
      second.heard(seconds(), water(minute));
      minute++;
    }
    third.heard(seconds(), 40);
    assertEquals(water(minute - 1), tank.neighbour(seconds(), water(minute)), 0.01);
    assertEquals(water(minute - 1), third.neighbour(seconds(), 40), 0.01);
  }

  @Test
  void forgetsAProbeThatLeft() {
    days(1.2, 0);
    assertTrue(together());
    neighbours.leave(second);
    assertFalse(together());
  }
}
