package feedwitness.simulate;

import static feedwitness.simulate.Nurseries.MONDAY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import feedwitness.quantity.Octets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class NurserySeedTest {
  private static final Octets ASK_TANK = Octets.ofHex("0b 03 00 00 00 04 44 a3");
  private static final String FAULTS =
      "T+1000s +300s bus garbage\nT+2000s +300s source garbage\nT+3000s +5m line in-air";

  private static List<String> told(long seed, int every) {
    Nursery nursery = Nurseries.with(seed, Schedule.parse("t", FAULTS), MONDAY);
    List<String> told = new ArrayList<>();
    for (int second = every; second <= 7200; second += every) {
      nursery.advanceTo(MONDAY.plusSeconds(second));
      told.add(nursery.sourceLine() + " | " + nursery.answer(ASK_TANK) + nursery.truth());
    }
    return told;
  }

  @Test
  void theSameSeedTellsTheSameStoryOctetForOctet() {
    assertEquals(told(42, 20), told(42, 20));
  }

  @Test
  void anotherSeedTellsAnother() {
    assertNotEquals(told(42, 20), told(43, 20));
  }

  @Test
  void theTruthDoesNotDependOnHowOftenOneLooks() {
    Nursery looked = Nurseries.with(9, Schedule.week(), MONDAY);
    for (int i = 0; i < 5000; i++) {
      looked.step();
      looked.truth();
      looked.sourceLine();
      looked.answer(ASK_TANK);
    }
    Nursery jumped = Nurseries.with(9, Schedule.week(), MONDAY);
    jumped.advanceTo(MONDAY.plusSeconds(5000));
    assertEquals(jumped.truth(), looked.truth());
  }
}
