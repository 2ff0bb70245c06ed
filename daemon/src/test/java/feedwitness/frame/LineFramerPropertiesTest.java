package feedwitness.frame;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.frame.FrameOutcome.Frame;
import feedwitness.quantity.Octets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.Size;

/** What holds for lines whatever arrives. */
class LineFramerPropertiesTest {
  private static final int LONGEST = 24;

  /** Octets that often end a line, often look like a reading, and may be anything. */
  @Provide
  Arbitrary<byte[]> octets() {
    return Arbitraries.frequencyOf(
            net.jqwik.api.Tuple.of(2, Arbitraries.of((byte) '\n', (byte) '\r')),
            net.jqwik.api.Tuple.of(8, Arbitraries.bytes().between((byte) ' ', (byte) '~')),
            net.jqwik.api.Tuple.of(2, Arbitraries.bytes()))
        .array(byte[].class)
        .ofMaxSize(300);
  }

  @Property(tries = 500)
  void everyOctetIsInExactlyOneOutcomeOrEndsALine(
      @ForAll("octets") byte[] octets, @ForAll long seed) {
    List<FrameOutcome> outcomes =
        Pieces.random(LineFramer.joining(LONGEST), Octets.of(octets), seed);
    assertEquals(withoutEnds(octets), Pieces.accounted(outcomes));
    assertTrue(outcomes.stream().allMatch(o -> o.octets().length() <= LONGEST));
  }

  @Property(tries = 500)
  void outcomesDoNotDependOnHowTheOctetsWereCut(
      @ForAll("octets") byte[] octets, @ForAll long seed) {
    assertEquals(
        Pieces.whole(LineFramer.joining(LONGEST), Octets.of(octets)),
        Pieces.random(LineFramer.joining(LONGEST), Octets.of(octets), seed));
  }

  @Property(tries = 500)
  void framesHoldOnlyWhatMayStandInALine(@ForAll("octets") byte[] octets) {
    for (FrameOutcome outcome : LineFramer.afterQuery(LONGEST).feed(Octets.of(octets))) {
      if (outcome instanceof Frame frame) {
        assertEquals(-1, LineText.firstStranger(frame.octets()));
      }
    }
  }

  @Property(tries = 500)
  void onlyLinesTouchedByNoiseAreLost(
      @ForAll @Size(min = 1, max = 12) List<Boolean> touched,
      @ForAll("noise") byte[] noise,
      @ForAll long seed) {
    List<Octets> sent = new ArrayList<>();
    List<String> untouched = new ArrayList<>();
    for (int i = 0; i < touched.size(); i++) {
      String line = "%d.2,12.4".formatted(300 + i);
      sent.add(Octets.ofText(line.substring(0, 4)));
      if (touched.get(i)) {
        sent.add(Octets.of(noise));
      } else {
        untouched.add(line);
      }
      sent.add(Octets.ofText(line.substring(4) + "\r\n"));
    }
    List<FrameOutcome> outcomes =
        Pieces.random(LineFramer.afterQuery(LONGEST), Pieces.join(sent), seed);
    assertEquals(untouched, Pieces.frames(outcomes).stream().map(Octets::toText).toList());
  }

  /** Octets that cannot stand in a line, sometimes more than a line may have, never an end. */
  @Provide
  Arbitrary<byte[]> noise() {
    return Arbitraries.of((byte) 0, (byte) 0x1b, (byte) 0x80, (byte) 0xfe, (byte) 0xff)
        .array(byte[].class)
        .ofMinSize(1)
        .ofMaxSize(3 * LONGEST);
  }

  @Property(tries = 20)
  void afterABurstOfTenKilobytesTheNextLineIsRead(
      @ForAll @Size(10_000) byte[] burst, @ForAll long seed) {
    Octets octets = Pieces.join(List.of(Octets.of(burst), Octets.ofText("\n351.2,12.4\n")));
    List<Octets> frames = Pieces.frames(Pieces.random(LineFramer.joining(LONGEST), octets, seed));
    assertEquals("351.2,12.4", frames.get(frames.size() - 1).toText());
  }

  private static Octets withoutEnds(byte[] octets) {
    byte[] kept = new byte[octets.length];
    int length = 0;
    for (byte octet : octets) {
      if (octet != '\n' && octet != '\r') {
        kept[length++] = octet;
      }
    }
    return Octets.of(Arrays.copyOf(kept, length));
  }
}
