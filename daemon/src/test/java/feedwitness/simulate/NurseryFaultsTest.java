package feedwitness.simulate;

import static feedwitness.simulate.Nurseries.local;
import static feedwitness.simulate.Nurseries.seconds;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.Octets;
import org.junit.jupiter.api.Test;

class NurseryFaultsTest {
  private static final Octets ASK_TANK = Octets.ofHex("0b 03 00 00 00 04 44 a3");
  private static final Octets ASK_LINE = Octets.ofHex("0c 04 00 00 00 02 70 d6");

  private final Nursery nursery = Nurseries.quiet(local(17, 12, 0));

  private static int word(Octets octets, int at) {
    return octets.at(at) << 8 | octets.at(at + 1);
  }

  private float tankFloat(int at) {
    Octets answer = nursery.answer(ASK_TANK);
    return Float.intBitsToFloat(word(answer, at) << 16 | word(answer, at + 2));
  }

  @Test
  void octetsSayWhatTheProbesShow() {
    seconds(nursery, 300);
    Truth truth = nursery.truth();
    assertEquals((float) truth.tank().indicated(), tankFloat(3));
    assertEquals((float) truth.tank().indicatedCelsius(), tankFloat(7));
    Octets line = nursery.answer(ASK_LINE);
    assertEquals(truth.line().indicated() * 1000, word(line, 3), 1e-6);
    assertEquals(truth.line().indicatedCelsius() * 10, (short) word(line, 5), 1e-6);
    String[] fields = nursery.sourceLine().toText().strip().split(",", -1);
    assertEquals(truth.source().indicated() * 1000, Double.parseDouble(fields[0]), 1e-6);
    assertEquals(truth.source().indicatedCelsius(), Double.parseDouble(fields[1]), 1e-6);
    assertEquals(truth.source().raw(), truth.source().indicated(), 0.01);
  }

  @Test
  void aPulledCableIsPulledForItsTime() {
    nursery.begin("+3m bus unplug");
    assertTrue(nursery.isUnplugged(Wire.BUS));
    assertFalse(nursery.isUnplugged(Wire.SOURCE));
    seconds(nursery, 181);
    assertFalse(nursery.isUnplugged(Wire.BUS));
  }

  @Test
  void aSilentInstrumentLeavesItsNeighbourTalking() {
    nursery.begin("+1m tank silence");
    nursery.begin("+1m source silence");
    assertEquals(Octets.NONE, nursery.answer(ASK_TANK));
    assertEquals(9, nursery.answer(ASK_LINE).length());
    assertEquals(Octets.NONE, nursery.sourceLine());
    nursery.begin("+1m bus silence");
    assertEquals(Octets.NONE, nursery.answer(ASK_LINE));
    seconds(nursery, 61);
    assertEquals(13, nursery.answer(ASK_TANK).length());
  }

  @Test
  void garbageIsNoSound() {
    nursery.begin("+1m source garbage");
    nursery.begin("+1m bus garbage");
    assertFalse(nursery.sourceLine().toText().matches("\\d+\\.\\d,\\d+\\.\\d\\d\r\n"));
    for (int i = 0; i < 50; i++) {
      assertNotEquals(13, sound(nursery.answer(ASK_TANK)));
    }
  }

  /** Length if the check holds, else 0. */
  private static int sound(Octets octets) {
    return octets.length() > 3 && Crc16.holds(octets) ? octets.length() : 0;
  }

  @Test
  void aProbeInAirReadsNearZeroAndTheAirsTemperature() {
    double before = nursery.truth().line().indicated();
    nursery.begin("line in-air +20m");
    seconds(nursery, 15);
    assertTrue(nursery.truth().line().inAir());
    assertTrue(nursery.truth().line().indicated() < 0.7 * before);
    seconds(nursery, 1100);
    assertEquals(0, nursery.truth().line().indicated(), 0.005);
    assertTrue(word(nursery.answer(ASK_LINE), 3) <= 5);
    seconds(nursery, 300);
    assertEquals(before, nursery.truth().line().indicated(), 0.4);
  }

  @Test
  void someProbesInAirHoldADropForMinutes() {
    int held = 0;
    for (int seed = 0; seed < 12; seed++) {
      Nursery one = Nurseries.with(seed, Schedule.quiet(), local(17, 3, 0));
      one.begin("tank in-air +10m");
      seconds(one, 60);
      held += one.truth().tank().indicated() > 0.08 ? 1 : 0;
    }
    assertTrue(held > 2 && held < 12, "held " + held);
  }

  @Test
  void aStuckProbeRepeatsItself() {
    nursery.begin("tank stuck +30m");
    Octets first = nursery.answer(ASK_TANK);
    seconds(nursery, 1700);
    assertEquals(first, nursery.answer(ASK_TANK));
    seconds(nursery, 200);
    assertNotEquals(first, nursery.answer(ASK_TANK));
  }

  @Test
  void aFailedTemperatureSensorShowsItsFailure() {
    for (double failure : new double[] {-127, 85, 0}) {
      nursery.begin("line temperature-failure %.0fC +5m".formatted(failure));
      nursery.begin("tank temperature-failure %.0fC +5m".formatted(failure));
      nursery.begin("source temperature-failure %.0fC +5m".formatted(failure));
      seconds(nursery, 2);
      assertEquals((int) (failure * 10), (short) word(nursery.answer(ASK_LINE), 5));
      assertEquals((float) failure, tankFloat(7));
      assertTrue(
          nursery.sourceLine().toText().endsWith(",%.2f\r\n".formatted(failure)),
          () -> nursery.sourceLine().toPrintable());
      assertTrue(nursery.truth().line().indicated() > 0.5);
    }
  }

  @Test
  void aStickingCheckValveTakesTwelvePercentOverFourHours() {
    nursery.begin("injector-sag 12% +4h");
    seconds(nursery, 4 * 3600);
    Truth truth = Nurseries.watering(nursery);
    double added = truth.line().at25() - truth.source().at25();
    assertEquals(0.88, added / (truth.feed().target() - 0.46), 0.04);
    assertEquals(0.88, truth.feed().injectedShare(), 0.03);
    nursery.begin("injector-service");
    seconds(nursery, 600);
    assertEquals(1, Nurseries.watering(nursery).feed().injectedShare(), 0.03);
  }

  @Test
  void foulingLowersWhatIsShownUntilTheProbeIsCleaned() {
    nursery.begin("line fouling 18% +1h");
    seconds(nursery, 3600);
    assertEquals(0.83, nursery.truth().line().sensitivity(), 0.03);
    nursery.begin("line clean");
    assertEquals(1, nursery.truth().line().sensitivity(), 1e-9);
  }

  @Test
  void adjustmentLeavesTheResidualItWasGiven() {
    nursery.begin("tank clean");
    assertEquals(0.979, nursery.truth().tank().sensitivity(), 1e-6);
    nursery.begin("tank adjust -0.2%");
    assertEquals(0.998, nursery.truth().tank().sensitivity(), 1e-6);
  }

  @Test
  void aToppedUpTankIsThinner() {
    Truth before = nursery.truth();
    nursery.begin("top-up 120L");
    seconds(nursery, 3600);
    Truth after = nursery.truth();
    assertEquals(before.feed().tankLitres() + 120, after.feed().tankLitres(), 0.5);
    assertTrue(after.tank().at25() < before.tank().at25() - 0.1);
  }

  @Test
  void aBatchIsMixedOnDemand() {
    nursery.begin("batch 2.0mS/cm");
    seconds(nursery, 3 * 3600);
    assertEquals(2.0, nursery.truth().tank().at25(), 0.06);
  }

  @Test
  void anEmptyBarrelBringsAirThenSourceWaterWithinMinutes() {
    nursery.begin("empty-barrel +6h");
    boolean air = false;
    Truth truth = nursery.truth();
    for (int i = 0; i < 3 * 3600; i++) {
      nursery.step();
      truth = nursery.truth();
      air |= truth.line().inAir();
    }
    assertTrue(air);
    truth = Nurseries.watering(nursery);
    assertEquals(0, truth.feed().barrelLitres());
    assertFalse(truth.line().inAir());
    assertEquals(truth.source().at25(), truth.line().at25(), 0.01);
    seconds(nursery, 3 * 3600 + 60);
    assertTrue(nursery.truth().feed().barrelLitres() > 150);
  }

  @Test
  void anOpenBypassMakesTheLineSourceWater() {
    nursery.begin("bypass +2h");
    Truth truth = Nurseries.watering(nursery);
    assertEquals(truth.source().at25(), truth.line().at25(), 0.01);
    assertEquals(0, truth.feed().injectedShare());
    seconds(nursery, 2 * 3600);
    truth = Nurseries.watering(nursery);
    assertEquals(truth.feed().target(), truth.line().at25(), 0.06);
  }

  @Test
  void theWrongStockShowsFromTheFillOn() {
    nursery.begin("empty-barrel +1s");
    seconds(nursery, 1);
    nursery.begin("empty-barrel +1d");
    nursery.begin("refill-barrel 80%");
    Truth truth = Nurseries.watering(nursery);
    double added = truth.line().at25() - truth.source().at25();
    assertEquals(0.8, added / (truth.feed().target() - 0.46), 0.04);
  }

  @Test
  void nonsenseIsRefusedWithARemedy() {
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> nursery.begin("line explode +1m"));
    assertTrue(refused.toString().contains("in-air"), refused::toString);
  }
}
