package feedwitness.watch.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.PointName;
import feedwitness.site.FeedLine;
import feedwitness.watch.drift.DriftFinding.Stage;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Water that never rests, read every minute, every third and every quarter of an hour. */
class RareReadingsTest {
  private final DriftWatch watch = new DriftWatch(FeedLine.ofPoint(new PointName("recording")));
  private final List<DriftFinding> findings = new ArrayList<>();

  /** Plays water of 0.21 mS/cm that jitters in steps of 1.4 %, times what is given by minute. */
  private List<DriftFinding> play(int every, int minutes, IntToDoubleFunction share) {
    Random random = new Random(5);
    for (int minute = 0; minute < minutes; minute += every) {
      double value = 0.21 * (random.nextInt(4) == 0 ? 1.014 : 1) * share.applyAsDouble(minute);
      long millis = Waterings.MONDAY + minute * 60_000L;
      findings.addAll(watch.line(1, millis * 1_000_000, millis, value, Double.NaN, 8));
    }
    return findings.stream().filter(f -> f.stage().compareTo(Stage.NOTICE) >= 0).toList();
  }

  private static long minutesAfter(int minute, DriftFinding finding) {
    return (finding.detected().toEpochMilli() - Waterings.MONDAY) / 60_000 - minute;
  }

  @Test
  void aStepIsFoundWithinTenMinutesHoweverOftenTheWaterIsRead() {
    for (int every : new int[] {1, 2, 3}) {
      int begins = 1998;
      List<DriftFinding> told =
          new RareReadingsTest().play(every, 2300, m -> m >= begins && m < begins + 24 ? 0.925 : 1);
      assertEquals(1, told.size(), told::toString);
      assertTrue(minutesAfter(begins, told.get(0)) <= 10, () -> every + " min: " + told);
      assertEquals(-7.5, told.get(0).sizePercent(), 1.5);
    }
  }

  @Test
  void theReturnFromAStepTooSmallToTellIsNoStep() {
    List<DriftFinding> told = play(1, 2300, m -> m >= 1998 && m < 1998 + 26 ? 0.954 : 1);
    assertEquals(List.of(), told);
  }

  @Test
  void aReadingEachQuarterOfAnHourIsNoStringOfPauses() {
    assertEquals(List.of(), play(15, 4 * 1440, m -> 1));
    assertTrue(findings.stream().anyMatch(f -> f.kind() == DriftFinding.Kind.LEARNT));
    assertFalse(watch.standing().recent().isEmpty());
  }
}
