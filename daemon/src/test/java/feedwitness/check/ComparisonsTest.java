package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.PointName;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Samples, plain water and a reference thermometer. */
class ComparisonsTest {
  private static final CheckSubject LINE = CheckSubject.probe(new PointName("line"));
  private static final Entry ENTRY = new Entry("", LINE, Bench.SUNDAY, "the grower");

  private static Comparisons.Value25 value(double milliSiemensPerCm, double standard) {
    return new Comparisons.Value25(milliSiemensPerCm, standard, 17);
  }

  private static ComparisonMade made(Comparisons.Outcome outcome) {
    return assertInstanceOf(Comparisons.Made.class, outcome, outcome::toString).evidence();
  }

  private static void refused(Comparisons.Outcome outcome, String words) {
    Comparisons.Refused refused = assertInstanceOf(Comparisons.Refused.class, outcome);
    assertTrue(refused.words().contains(words), refused::words);
  }

  @Test
  void comparesAPipeProbeWithASample() {
    ComparisonMade one =
        made(
            Comparisons.grabSample(
                ENTRY, value(1.41, 0.007), "pen", value(1.5, 0.01), Verdict.PASS, 3));
    assertEquals(-6, one.error(), 1e-9);
    assertEquals(Verdict.FAIL, one.verdict());
    // u(r) = hypot(0.007/1.5, 1.41·0.01/1.5²)
    assertEquals(200 * Math.hypot(0.007 / 1.5, 1.41 * 0.01 / 2.25), one.expanded(), 1e-9);
    assertTrue(one.words().contains("6.0 % low"), one::words);
  }

  @Test
  void needsAMeterThatPassedItsOwnCheck() {
    refused(
        Comparisons.grabSample(
            ENTRY, value(1.41, 0.01), "pen", value(1.5, 0.01), Verdict.CANT_TELL, 3),
        "meter 'pen' did not pass");
    refused(
        Comparisons.grabSample(ENTRY, value(1.41, 0.01), "pen", value(-1, 0.01), Verdict.PASS, 3),
        "makes no sense");
  }

  @Test
  void comparesTemperatures() {
    ComparisonMade one = made(Comparisons.thermometer(ENTRY, 21.9, 0.05, "glass", 21.2, 0.05, 0.5));
    assertEquals(0.7, one.error(), 1e-9);
    assertEquals(Verdict.FAIL, one.verdict());
    assertTrue(one.words().contains("0.7 K high"), one::words);
    refused(Comparisons.thermometer(ENTRY, 70, 0.05, "glass", 21.2, 0.05, 0.5), "−5 to 60 °C");
  }

  private final Bench bench = new Bench();
  private final PlainWaterWatch watch = new PlainWaterWatch(LINE, "source", 3);
  private final List<ComparisonMade> found = new ArrayList<>();

  private void line(double milliSiemensPerCm, int times) {
    for (int i = 0; i < times; i++) {
      bench.wait(Duration.ofSeconds(10));
      watch.line(bench.stamp(), value(milliSiemensPerCm, 0.005)).ifPresent(found::add);
    }
  }

  @Test
  void takesPlainWaterForAFreeCheckAtTheLowEnd() {
    watch.source(value(0.46, 0.004));
    line(1.5, 30);
    line(0.52, 3);
    line(0.48, 5);
    line(0.447, 60);
    line(1.5, 5);
    assertEquals(1, found.size());
    assertEquals(ComparisonMade.Type.PLAIN_WATER, found.get(0).type());
    assertEquals(-2.8, found.get(0).error(), 0.1);
    assertEquals(Verdict.CANT_TELL, found.get(0).verdict());
  }

  @Test
  void makesNothingOfAShortFlushOrOfALineThatIsNeverFed() {
    watch.source(value(0.46, 0.004));
    line(0.46, 100);
    line(1.5, 30);
    line(0.46, 10);
    line(1.5, 30);
    assertEquals(List.of(), found);
  }
}
