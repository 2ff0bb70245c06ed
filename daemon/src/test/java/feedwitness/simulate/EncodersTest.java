package feedwitness.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.Octets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Against octets written by hand. */
class EncodersTest {
  /** 1.5 is 3FC00000, 18.25 is 41920000 in IEEE 754 single precision. */
  private static final Map<Integer, ModbusSlave.Unit> BUS =
      Map.of(
          11, ModbusSlave.Unit.floats(3, 1.5, 18.25),
          12, ModbusSlave.Unit.integers(4, 1266, -15));

  private static Octets hex(String hex) {
    return Octets.ofHex(hex);
  }

  /** Appends the check computed by the table-free definition, the other way round. */
  private static Octets checked(String hex) {
    Octets body = hex(hex);
    int crc = Crc16.of(body, body.length());
    return hex("%s %02x %02x".formatted(hex, crc & 0xff, crc >>> 8));
  }

  @Test
  void theCheckIsThatOfTheModbusSpecification() {
    assertTrue(Crc16.holds(hex("11 03 00 6b 00 03 76 87")));
    assertEquals(0x8776, Crc16.of(hex("11 03 00 6b 00 03"), 6));
    assertEquals(0x1241, Crc16.of(hex("02 07"), 2));
    assertFalse(Crc16.holds(hex("11 03 00 6b 00 03 87 76")));
  }

  @Test
  void theSourceProbePushesMicrosiemensAndDegrees() {
    assertEquals("351.2,12.41\r\n", PushedLine.of(0.3512, 12.41).toText());
    assertEquals("0.0,-127.00\r\n", PushedLine.of(0, -127).toText());
  }

  @Test
  void theTankAnswersFloatsHighWordFirst() {
    assertEquals(
        checked("0b 03 08 3f c0 00 00 41 92 00 00"),
        ModbusSlave.answer(hex("0b 03 00 00 00 04 44 a3"), BUS));
  }

  @Test
  void theLineAnswersIntegers() {
    assertEquals(
        checked("0c 04 04 04 f2 ff f1"), ModbusSlave.answer(hex("0c 04 00 00 00 02 70 d6"), BUS));
    assertEquals(checked("0c 04 02 ff f1"), ModbusSlave.answer(checked("0c 04 00 01 00 01"), BUS));
  }

  @Test
  void refusesByException() {
    assertEquals(checked("0b 84 01"), ModbusSlave.answer(checked("0b 04 00 00 00 02"), BUS));
    assertEquals(
        checked("0c 90 01"), ModbusSlave.answer(checked("0c 10 00 00 00 01 02 00 00"), BUS));
    assertEquals(checked("0b 83 02"), ModbusSlave.answer(checked("0b 03 00 02 00 03"), BUS));
    assertEquals(checked("0b 83 02"), ModbusSlave.answer(checked("0b 03 ff ff 00 01"), BUS));
    assertEquals(checked("0b 83 03"), ModbusSlave.answer(checked("0b 03 00 00 00 00"), BUS));
    assertEquals(checked("0b 83 03"), ModbusSlave.answer(checked("0b 03 00 00 00 7e"), BUS));
    assertEquals(checked("0b 83 03"), ModbusSlave.answer(checked("0b 03 00"), BUS));
  }

  @Test
  void staysSilentToDamageAndToOthers() {
    assertEquals(Octets.NONE, ModbusSlave.answer(hex("0b 03 00 00 00 04 44 a2"), BUS));
    assertEquals(Octets.NONE, ModbusSlave.answer(checked("0d 03 00 00 00 04"), BUS));
    assertEquals(Octets.NONE, ModbusSlave.answer(checked("00 03 00 00 00 04"), BUS));
    assertEquals(Octets.NONE, ModbusSlave.answer(Octets.NONE, BUS));
  }

  @Test
  void whatDoesNotFitShowsTheNearest() {
    assertEquals(
        List.of(0xffff, 0x8000), ModbusSlave.Unit.integers(4, 70_000, -40_000).registers());
    assertEquals(List.of(0, 0x7fff), ModbusSlave.Unit.integers(4, -3, 40_000).registers());
  }

  @Test
  void theBusHearsRequestsInPiecesAndInARow() {
    BusEar ear = new BusEar();
    Octets ask = hex("0b 03 00 00 00 04 44 a3");
    assertEquals(List.of(), ear.hear(ask.slice(0, 3)));
    assertEquals(List.of(ask), ear.hear(ask.slice(3, 8)));
    assertEquals(List.of(ask, ask), ear.hear(Octets.ofText(ask.toText() + ask.toText())));
    assertEquals(Octets.NONE, ear.silence());
  }

  @Test
  void aSilenceEndsRubbishOnTheBus() {
    BusEar ear = new BusEar();
    Octets ask = hex("0b 03 00 00 00 04 44 a3");
    assertEquals(List.of(), ear.hear(hex("00 ff 17")));
    assertEquals(hex("00 ff 17"), ear.silence());
    assertEquals(List.of(ask), ear.hear(ask));
    for (int i = 0; i < 40; i++) {
      assertEquals(List.of(), ear.hear(Octets.of(new byte[300])));
    }
    ear.silence();
    assertEquals(List.of(ask), ear.hear(ask));
  }
}
