package feedwitness.frame;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.frame.FrameOutcome.Frame;
import feedwitness.frame.FrameOutcome.Reason;
import feedwitness.frame.FrameOutcome.Rejection;
import feedwitness.quantity.Octets;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines from a stream of octets. */
class LineFramerTest {
  private static final int LONGEST = 32;

  private static List<String> lines(List<FrameOutcome> outcomes) {
    return Pieces.frames(outcomes).stream().map(Octets::toText).toList();
  }

  private static List<Reason> reasons(List<FrameOutcome> outcomes) {
    return outcomes.stream()
        .filter(o -> o instanceof Rejection)
        .map(o -> ((Rejection) o).reason())
        .toList();
  }

  private static List<FrameOutcome> feed(LineFramer framer, String text) {
    return framer.feed(Octets.ofText(text));
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r", "\r\n", "\r\n\r\n"})
  void acceptsEveryEndOfLine(String end) {
    assertEquals(
        List.of("351.2,12.41", "351.3,12.40"),
        lines(feed(LineFramer.afterQuery(LONGEST), "351.2,12.41" + end + "351.3,12.40" + end)));
  }

  @Test
  void everySplitOfTheLinesGivesTheSameOutcomes() {
    Octets octets = Octets.ofText("12.41\r\n351.2,12.41\r\n351.3\0,12.40\n351.4,12.39\rhalf");
    List<FrameOutcome> whole = Pieces.whole(LineFramer.joining(LONGEST), octets);
    assertEquals(List.of("351.2,12.41", "351.4,12.39"), lines(whole));
    assertEquals(List.of(Reason.INCOMPLETE, Reason.NOISE, Reason.INCOMPLETE), reasons(whole));
    for (int i = 0; i <= octets.length(); i++) {
      for (int j = i; j <= octets.length(); j++) {
        assertEquals(whole, Pieces.cut(LineFramer.joining(LONGEST), octets, i, j));
      }
    }
    int[] everywhere = java.util.stream.IntStream.range(1, octets.length()).toArray();
    assertEquals(whole, Pieces.cut(LineFramer.joining(LONGEST), octets, everywhere));
  }

  @Test
  void theTailOfALineIsNoReading() {
    LineFramer framer = LineFramer.joining(LONGEST);
    List<FrameOutcome> outcomes = feed(framer, "13.2,12.4\r\n513.2,12.4\r\n");
    assertEquals(List.of(Reason.INCOMPLETE), reasons(outcomes));
    assertEquals(List.of("513.2,12.4"), lines(outcomes));
  }

  @Test
  void aStreamJoinedBetweenLinesLosesNothing() {
    assertEquals(
        List.of("513.2,12.4"), lines(feed(LineFramer.joining(LONGEST), "\n513.2,12.4\r\n")));
  }

  @Test
  void theRestOfALineGivenUpIsNoReadingEither() {
    LineFramer framer = LineFramer.afterQuery(LONGEST);
    assertEquals(List.of(), feed(framer, "5"));
    assertEquals(List.of(Reason.INCOMPLETE), reasons(framer.giveUp()));
    List<FrameOutcome> outcomes = feed(framer, "13.2,12.4\r\n513.3,12.4\r\n");
    assertEquals(List.of(Reason.INCOMPLETE), reasons(outcomes));
    assertEquals(List.of("513.3,12.4"), lines(outcomes));
  }

  @Test
  void aPauseBetweenLinesCostsNothing() {
    LineFramer framer = LineFramer.afterQuery(LONGEST);
    assertEquals(List.of("1,2"), lines(feed(framer, "1,2\r\n")));
    assertEquals(List.of(), framer.giveUp());
    assertEquals(List.of("3,4"), lines(feed(framer, "3,4\r\n")));
  }

  @Test
  void aLineTooLongIsRejectedOnceAndTheNextOneIsRead() {
    LineFramer framer = LineFramer.afterQuery(LONGEST);
    List<FrameOutcome> outcomes = feed(framer, "5".repeat(10_000) + "\r\n513.2,12.4\r\n");
    assertEquals(1, reasons(outcomes).stream().filter(r -> r == Reason.TOO_LONG).count());
    assertEquals(List.of("513.2,12.4"), lines(outcomes));
    assertTrue(outcomes.stream().allMatch(o -> o.octets().length() <= LONGEST));
  }

  @Test
  void aLineOfTheLongestLengthIsRead() {
    String longest = "5".repeat(LONGEST);
    assertEquals(List.of(longest), lines(feed(LineFramer.afterQuery(LONGEST), longest + "\n")));
    assertEquals(List.of(), lines(feed(LineFramer.afterQuery(LONGEST), longest + "5\n")));
  }

  @ParameterizedTest
  @ValueSource(ints = {0x00, 0x07, 0x0c, 0x11, 0x1b, 0x7f, 0x80, 0xb2, 0xc2, 0xfe, 0xff})
  void anOctetThatCannotStandInALineCostsThatLineOnly(int octet) {
    List<FrameOutcome> outcomes =
        feed(LineFramer.afterQuery(LONGEST), "351" + (char) octet + "2,12.41\n351.3,12.40\n");
    assertEquals(List.of(Reason.NOISE), reasons(outcomes));
    assertEquals(List.of("351.3,12.40"), lines(outcomes));
    assertTrue(((Rejection) outcomes.get(0)).detail().contains("0x%02x".formatted(octet)));
  }

  @Test
  void degreeAndMicroSignsAreReadInBothEncodings() {
    String text = "462\tµS/cm 24.9 °C";
    for (var encoding : List.of(StandardCharsets.ISO_8859_1, StandardCharsets.UTF_8)) {
      Octets octets = Octets.of((text + "\n").getBytes(encoding));
      List<FrameOutcome> outcomes = LineFramer.afterQuery(LONGEST).feed(octets);
      assertEquals(
          List.of(text),
          Pieces.frames(outcomes).stream().map(LineText::of).toList(),
          encoding.name());
    }
    assertEquals(
        "µ", LineText.of(Octets.of("\u03bc".getBytes(StandardCharsets.UTF_8))), "Greek letter mu");
  }

  @Test
  void anOutcomeSaysWhatToCheck() {
    List<FrameOutcome> outcomes =
        feed(LineFramer.afterQuery(LONGEST), "3\0\n" + "5".repeat(LONGEST + 1));
    assertEquals(
        "octet 0x00 at place 2 cannot stand in a text line; check baud rate and parity",
        ((Rejection) outcomes.get(0)).detail());
    assertEquals(
        "no end of line within 32 octets; check baud rate, parity and longest-line",
        ((Rejection) outcomes.get(1)).detail());
  }

  @Test
  void frameOctetsAreWhatWasSent() {
    assertEquals(
        List.of(new Frame(Octets.ofText(" 1,2 "))),
        feed(LineFramer.afterQuery(LONGEST), " 1,2 \r"));
  }

  @Test
  void refusesALongestLineOutsideItsLimits() {
    assertThrows(IllegalArgumentException.class, () -> LineFramer.joining(7));
    assertThrows(IllegalArgumentException.class, () -> LineFramer.joining(4097));
  }
}
