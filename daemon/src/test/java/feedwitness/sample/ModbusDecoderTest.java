package feedwitness.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.frame.FrameOutcome.Frame;
import feedwitness.frame.ModbusCrc;
import feedwitness.profile.Fields;
import feedwitness.profile.Fields.OctetOrder;
import feedwitness.profile.Fields.Place;
import feedwitness.profile.Protocol;
import feedwitness.profile.Protocol.Read;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.Octets;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.DecodeOutcome.Decoded;
import feedwitness.sample.DecodeOutcome.Refused;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Numbers out of Modbus registers. */
class ModbusDecoderTest {

  private static Frame frame(String hexWithoutCheck) {
    return new Frame(ModbusCrc.append(Octets.ofHex(hexWithoutCheck)));
  }

  private static Decoder decoder(List<Read> reads, Place conductivity, Place temperature) {
    return Decoder.of(
        FamilyProfiles.around(
            new Protocol.Modbus(reads),
            new Fields(
                conductivity,
                ConductivityUnit.MICROSIEMENS_PER_CM,
                Optional.of(temperature),
                TemperatureUnit.CELSIUS)));
  }

  /** Two reads of different functions, the number wanted in the middle of the first. */
  private static Decoded decode(Fields.Type type, OctetOrder order, String wanted) {
    Decoder decoder =
        decoder(
            List.of(new Read(3, 10, 4), new Read(4, 10, 1)),
            new Place.Registers(3, 11, type, order, 1, 0),
            new Place.Registers(4, 10, Fields.Type.INT16, OctetOrder.ABCD, 0.1, -40));
    String filler = " aa aa".repeat(3 - type.registers());
    return assertInstanceOf(
        Decoded.class,
        decoder.decode(
            List.of(frame("01 03 08 bb bb " + wanted + filler), frame("01 04 02 02 71"))));
  }

  @ParameterizedTest
  @CsvSource({
    "INT16,   ABCD, fe 0c,       -500",
    "INT16,   BADC, 0c fe,       -500",
    "UINT16,  ABCD, fe 0c,       65036",
    "UINT16,  BADC, 0c fe,       65036",
    "INT32,   ABCD, fe dc ba 98, -19088744",
    "INT32,   BADC, dc fe 98 ba, -19088744",
    "INT32,   CDAB, ba 98 fe dc, -19088744",
    "INT32,   DCBA, 98 ba dc fe, -19088744",
    "UINT32,  ABCD, fe dc ba 98, 4275878552",
    "UINT32,  BADC, dc fe 98 ba, 4275878552",
    "UINT32,  CDAB, ba 98 fe dc, 4275878552",
    "UINT32,  DCBA, 98 ba dc fe, 4275878552",
    "FLOAT32, ABCD, 3f e8 00 00, 1.8125",
    "FLOAT32, BADC, e8 3f 00 00, 1.8125",
    "FLOAT32, CDAB, 00 00 3f e8, 1.8125",
    "FLOAT32, DCBA, 00 00 e8 3f, 1.8125"
  })
  void everyTypeInEveryOrderOfOctets(
      Fields.Type type, OctetOrder order, String octets, double value) {
    Decoded decoded = decode(type, order, octets);
    assertEquals(value, decoded.reading().conductivity());
    assertEquals(22.5, decoded.reading().temperature(), 1e-9, "625 × 0.1 − 40");
    assertEquals("", decoded.remark());
  }

  @ParameterizedTest
  @CsvSource({"7f c0 00 00, NaN", "7f 80 00 00, Infinity", "ff 80 00 00, -Infinity"})
  void noNumberTravelsAndIsSaid(String octets, String word) {
    Decoded decoded = decode(Fields.Type.FLOAT32, OctetOrder.ABCD, octets);
    assertTrue(Double.isNaN(decoded.reading().conductivity()));
    assertEquals(22.5, decoded.reading().temperature(), 1e-9);
    assertEquals(
        "no conductivity: registers 11 to 12 (function 3) holds " + word, decoded.remark());
  }

  @Test
  void scaleAndOffsetApplyInTheFieldsUnit() {
    Decoder decoder =
        decoder(
            List.of(new Read(4, 0, 2)),
            new Place.Registers(4, 0, Fields.Type.UINT16, OctetOrder.ABCD, 0.5, 10),
            new Place.Registers(4, 1, Fields.Type.INT16, OctetOrder.ABCD, 0.01, 0));
    Decoded decoded =
        assertInstanceOf(Decoded.class, decoder.decode(List.of(frame("01 04 04 0b b8 ff 9c"))));
    assertEquals(1510, decoded.reading().conductivity());
    assertEquals(1.51, decoded.reading().conductivityMilliSiemensPerCm(), 1e-12);
    assertEquals(-1, decoded.reading().temperature(), 1e-12);
  }

  @Test
  void anExceptionReplyIsPutInWords() {
    Refused refused =
        assertInstanceOf(
            Refused.class,
            Decoder.of(FamilyProfiles.modbusFloat()).decode(List.of(frame("01 83 02"))));
    assertEquals(Missing.Cause.INSTRUMENT_REFUSED, refused.cause());
    assertEquals(
        "illegal data address (exception 2): the profile asks for registers 0 to 3 with function 3,"
            + " and the instrument does not have them all",
        refused.text());
  }

  @Test
  void everyExceptionCodeHasWords() {
    for (int code = 0; code < 256; code++) {
      Refused refused =
          assertInstanceOf(
              Refused.class,
              Decoder.of(FamilyProfiles.modbusScaled())
                  .decode(List.of(frame("02 84 %02x".formatted(code)))));
      assertEquals(Missing.Cause.INSTRUMENT_REFUSED, refused.cause());
      assertTrue(refused.text().contains("exception " + code), refused.text());
    }
  }

  @Test
  void anExceptionReplyToTheSecondReadIsThatOfTheSecondRead() {
    Decoder decoder =
        decoder(
            List.of(new Read(3, 0, 1), new Read(4, 7, 1)),
            new Place.Registers(3, 0, Fields.Type.UINT16, OctetOrder.ABCD, 1, 0),
            new Place.Registers(4, 7, Fields.Type.UINT16, OctetOrder.ABCD, 1, 0));
    Refused refused =
        assertInstanceOf(
            Refused.class, decoder.decode(List.of(frame("01 03 02 00 01"), frame("01 84 01"))));
    assertTrue(refused.text().contains("does not know function 4"), refused.text());
  }

  @Test
  void tooFewRepliesAndForeignRepliesAreRefused() {
    Decoder decoder = Decoder.of(FamilyProfiles.modbusScaled());
    for (List<Frame> frames :
        List.of(
            List.<Frame>of(),
            List.of(frame("01 04 02 00 01")),
            List.of(frame("01 03 04 00 01 00 02")),
            List.of(new Frame(Octets.ofHex("01"))),
            List.of(frame("01 04 04 00 01 00 02"), frame("01 04 04 00 01 00 02")))) {
      Refused refused = assertInstanceOf(Refused.class, decoder.decode(frames));
      assertEquals(Missing.Cause.UNREADABLE, refused.cause());
    }
  }
}
