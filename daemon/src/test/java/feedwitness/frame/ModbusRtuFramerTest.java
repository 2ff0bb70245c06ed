package feedwitness.frame;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.frame.FrameOutcome.Frame;
import feedwitness.frame.FrameOutcome.Reason;
import feedwitness.frame.FrameOutcome.Rejection;
import feedwitness.quantity.Octets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Replies from a bus. The frames marked "specification" are from the Modbus documents. */
class ModbusRtuFramerTest {
  private static final ModbusRequest REQUEST = new ModbusRequest(1, 3, 0, 4);

  /** 1.95 mS/cm and 18.5 °C as floats. */
  private static final Octets REPLY = Octets.ofHex("01 03 08 3f f9 99 9a 41 94 00 00 af 89");

  private static final Octets EXCEPTION = Octets.ofHex("01 83 02 c0 f1");

  private static ModbusRtuFramer waiting() {
    ModbusRtuFramer framer = new ModbusRtuFramer();
    assertEquals(List.of(), framer.expect(REQUEST));
    return framer;
  }

  private static Octets join(Octets... parts) {
    return Pieces.join(List.of(parts));
  }

  private static List<Object> kinds(List<FrameOutcome> outcomes) {
    List<Object> kinds = new ArrayList<>();
    for (FrameOutcome outcome : outcomes) {
      kinds.add(outcome instanceof Rejection rejection ? rejection.reason() : Frame.class);
    }
    return kinds;
  }

  @Test
  void theCheckIsThatOfTheSpecification() {
    // Modbus over serial line V1.02, appendix B: the message 02 07 has the check 12 41 as sent.
    assertEquals(0x1241, ModbusCrc.of(Octets.ofHex("02 07")));
    assertEquals(Octets.ofHex("02 07 41 12"), ModbusCrc.append(Octets.ofHex("02 07")));
    assertEquals(0xffff, ModbusCrc.of(Octets.NONE));
  }

  @Test
  void aRequestIsWrittenAsTheSpecificationSays() {
    // Application protocol V1.1b3, section 6.3: read holding registers 108 to 110.
    assertEquals(
        Octets.ofHex("11 03 00 6b 00 03 76 87"), new ModbusRequest(0x11, 3, 0x6b, 3).octets());
    assertEquals(11, new ModbusRequest(0x11, 3, 0x6b, 3).replyLength());
  }

  @Test
  void aRequestOutsideTheProtocolIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new ModbusRequest(0, 3, 0, 1));
    assertThrows(IllegalArgumentException.class, () -> new ModbusRequest(248, 3, 0, 1));
    assertThrows(IllegalArgumentException.class, () -> new ModbusRequest(1, 6, 0, 1));
    assertThrows(IllegalArgumentException.class, () -> new ModbusRequest(1, 3, -1, 1));
    assertThrows(IllegalArgumentException.class, () -> new ModbusRequest(1, 3, 65535, 2));
    assertThrows(IllegalArgumentException.class, () -> new ModbusRequest(1, 3, 0, 0));
    assertThrows(IllegalArgumentException.class, () -> new ModbusRequest(1, 3, 0, 126));
  }

  @Test
  void everySplitOfNoiseEchoAndReplyGivesTheSameOutcomes() {
    Octets octets = join(Octets.ofHex("00 01 03"), REQUEST.octets(), Octets.ofHex("ff"), REPLY);
    List<FrameOutcome> whole = Pieces.whole(waiting(), octets);
    assertEquals(List.of(Reason.NOISE, Reason.ECHO, Reason.NOISE, Frame.class), kinds(whole));
    for (int i = 0; i <= octets.length(); i++) {
      for (int j = i; j <= octets.length(); j++) {
        assertEquals(whole, Pieces.cut(waiting(), octets, i, j));
      }
    }
  }

  @Test
  void everySplitOfAnExceptionReplyIsFound() {
    for (int i = 0; i <= EXCEPTION.length(); i++) {
      assertEquals(List.of(new Frame(EXCEPTION)), Pieces.cut(waiting(), EXCEPTION, i));
    }
  }

  @Test
  void aReplyCutShortAnywhereIsIncomplete() {
    for (int i = 1; i < REPLY.length(); i++) {
      List<FrameOutcome> outcomes = Pieces.whole(waiting(), REPLY.slice(0, i));
      assertEquals(List.of(Reason.INCOMPLETE), kinds(outcomes), "after " + i + " octets");
    }
  }

  @Test
  void noSingleWrongOctetEverYieldsAFrame() {
    for (int place = 0; place < REPLY.length(); place++) {
      for (int flip = 1; flip < 256; flip++) {
        byte[] damaged = REPLY.toArray();
        damaged[place] ^= (byte) flip;
        List<FrameOutcome> outcomes = Pieces.whole(waiting(), Octets.of(damaged));
        assertEquals(List.of(), Pieces.frames(outcomes));
        assertTrue(place < 3 || kinds(outcomes).equals(List.of(Reason.BAD_CHECKSUM)));
      }
    }
  }

  @Test
  void leadingNulsAndGarbageDoNotHideTheReply() {
    for (String garbage : List.of("00", "00 00 00", "ff fe 01", "01 03", "01 03 08", "01 83")) {
      List<FrameOutcome> outcomes = Pieces.whole(waiting(), join(Octets.ofHex(garbage), REPLY));
      assertEquals(List.of(REPLY), Pieces.frames(outcomes), garbage);
    }
  }

  @Test
  void afterADamagedReplyTheNextOneIsFound() {
    ModbusRtuFramer framer = waiting();
    byte[] damaged = REPLY.toArray();
    damaged[4] ^= 1;
    assertEquals(List.of(), framer.feed(Octets.of(damaged)));
    assertEquals(List.of(Reason.BAD_CHECKSUM), kinds(framer.expect(REQUEST)));
    assertEquals(List.of(new Frame(REPLY)), framer.feed(REPLY));
  }

  @Test
  void aReplyFromAnotherUnitOrToAnotherFunctionIsNotTaken() {
    for (String head : List.of("02 03 08", "01 04 08", "01 03 06")) {
      Octets other = ModbusCrc.append(join(Octets.ofHex(head), REPLY.slice(3, REPLY.length() - 2)));
      assertEquals(List.of(), Pieces.frames(Pieces.whole(waiting(), other)), head);
    }
  }

  @Test
  void aReplyAfterTheTimeOutIsNotTaken() {
    ModbusRtuFramer framer = waiting();
    framer.giveUp();
    assertEquals(List.of(Reason.NOISE), kinds(Pieces.whole(framer, REPLY)));
  }

  @Test
  void aSecondReplyIsNotTaken() {
    assertEquals(
        List.of(Frame.class, Reason.NOISE), kinds(Pieces.whole(waiting(), join(REPLY, REPLY))));
  }

  @Test
  void theEchoOfARequestIsNeverTakenForAReply() {
    int lookAlikes = 0;
    for (int unit = 1; unit <= 247; unit++) {
      for (int low = 0; low < 256; low++) {
        // One register from 0x02xx: the echo begins with unit, function and a count of 2 octets.
        for (int function = 3; function <= 4; function++) {
          ModbusRequest request = new ModbusRequest(unit, function, 0x200 | low, 1);
          Octets echo = request.octets();
          int sent = echo.at(5) | echo.at(6) << 8;
          lookAlikes += ModbusCrc.of(echo.slice(0, 5)) == sent ? 1 : 0;
          ModbusRtuFramer framer = new ModbusRtuFramer();
          framer.expect(request);
          assertEquals(List.of(Reason.ECHO), kinds(Pieces.whole(framer, echo)), request.text());
        }
      }
    }
    assertTrue(
        lookAlikes > 0, "the trap exists: an echo whose first seven octets check as a reply");
  }

  @Test
  void burstsOfTenKilobytesAreBoundedAndTheReplyBehindThemIsFound() {
    ModbusRequest[] requests = {
      REQUEST, new ModbusRequest(4, 4, 0, 2), new ModbusRequest(6, 3, 0, 125)
    };
    byte[] random = new byte[10_000];
    new Random(17).nextBytes(random);
    byte[] fours = new byte[10_000];
    Arrays.fill(fours, (byte) 4);
    byte[] heads = new byte[10_000];
    for (int i = 0; i < heads.length; i++) {
      heads[i] = (byte) new int[] {6, 3, 250}[i % 3];
    }
    for (ModbusRequest request : requests) {
      for (byte[] burst : List.of(random, fours, heads, new byte[10_000])) {
        ModbusRtuFramer framer = new ModbusRtuFramer();
        framer.expect(request);
        int accounted = Pieces.accounted(framer.feed(Octets.of(burst))).length();
        assertTrue(burst.length - accounted <= ModbusRtuFramer.CAPACITY);
        Octets reply = reply(request, 7);
        assertEquals(List.of(reply), Pieces.frames(framer.feed(reply)), request.text());
      }
    }
  }

  @Test
  void theLongestReplyIsFound() {
    ModbusRequest request = new ModbusRequest(247, 4, 65411, 125);
    ModbusRtuFramer framer = new ModbusRtuFramer();
    framer.expect(request);
    assertEquals(255, request.replyLength());
    assertEquals(List.of(new Frame(reply(request, 3))), framer.feed(reply(request, 3)));
  }

  /** A reply whose registers come from a seed. */
  static Octets reply(ModbusRequest request, long seed) {
    byte[] registers = new byte[2 * request.count()];
    new Random(seed).nextBytes(registers);
    byte[] head = {(byte) request.unit(), (byte) request.function(), (byte) registers.length};
    return ModbusCrc.append(join(Octets.of(head), Octets.of(registers)));
  }
}
