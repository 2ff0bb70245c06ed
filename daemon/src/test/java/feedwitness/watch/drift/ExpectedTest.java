package feedwitness.watch.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.feed.FeedStock;
import feedwitness.feed.Mixer;
import feedwitness.site.FeedLine;
import feedwitness.watch.drift.DriftFinding.Kind;
import feedwitness.watch.drift.DriftFinding.Stage;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A line whose recipe or stock is known: expected from the first watering on, not learnt. */
class ExpectedTest {
  private static final FeedStock STOCK =
      new Mixer()
          .feed(
              Map.of(
                  "title", "House Feed, growing on",
                  "water", Map.of("measured", "0.46 mS/cm"),
                  "goal", Map.of("strength", "1.50 mS/cm", "frequency", "every watering"),
                  "use", List.of(Map.of("product", "house-feed")),
                  "stock", Map.of("volume", "200 L", "makes", 80, "coldest-night", "8 °C")))
          .orElseThrow();

  private static FeedLine line(Double... strengths) {
    return NurseryWeek.glasshouse(List.of(strengths)).withStock(STOCK);
  }

  /** Monday from midnight: the first watering is at 07:00. */
  private static Waterings waterings(FeedLine line) {
    return new Waterings(line, 5);
  }

  @Test
  void saysWhatTheLineShouldCarryFromTheFirstReadingOfTheSourceOn() {
    DriftStanding before = waterings(line()).hours(1).watch().standing();
    assertEquals(DriftStanding.From.RECIPE, before.from());
    assertEquals(1.50, before.expected(), 0.02);
    DriftStanding after = waterings(line()).hours(7.5).watch().standing();
    assertEquals(DriftStanding.Phase.LEARNING, after.phase());
    assertEquals(1.50, after.expected(), 0.02);
    assertEquals(100, after.sharePercent(), 3);
    assertEquals(80, after.ratio(), 3);
    assertEquals(80, after.ratioExpected(), 0.5);
    assertTrue(after.plusMinusPercent() > 2 && after.plusMinusPercent() < 12, after::toString);
    assertTrue(after.expectedPlusMinus() > 0.02 && after.expectedPlusMinus() < 0.12);
  }

  @Test
  void eachStrengthHasTheRatioItTakes() {
    Waterings week = waterings(line(1.50, 1.95));
    week.strength(1.95);
    DriftStanding standing = week.hours(10).watch().standing();
    assertEquals(1.95, standing.expected(), 0.02);
    assertEquals(STOCK.makes() / STOCK.share(1.95), standing.ratioExpected(), 0.5);
    assertEquals(standing.ratioExpected(), standing.ratio(), 2);
  }

  @Test
  void aSagOfTenPercentReadsTenPercent() {
    Waterings week = waterings(line()).hours(24);
    week.strength(STOCK.strength(0.9));
    week.hours(19);
    DriftStanding standing = week.watch().standing();
    assertEquals(90, standing.sharePercent(), 0.8);
    assertEquals(88.9, standing.ratio(), 0.8);
    assertEquals(-10, standing.open().orElseThrow().sizePercent(), 0.5);
    assertEquals(1.50, standing.expected(), 0.02);
  }

  @Test
  void aLineThatIsWrongFromTheBeginningIsToldAtItsThirdWatering() {
    Waterings week = waterings(line());
    week.strength(STOCK.strength(0.8));
    week.hours(8.5);
    List<DriftFinding> told =
        week.findings().stream().filter(f -> f.stage() == Stage.NOTICE).toList();
    assertEquals(List.of(Kind.OFF_RECIPE), told.stream().map(DriftFinding::kind).toList());
    assertEquals(-20, told.get(0).sizePercent(), 1.5);
    assertTrue(told.get(0).words().contains("1.50 mS/cm of the recipe"), told::toString);
  }

  @Test
  void whatIsRightAgainIsOver() {
    Waterings week = waterings(line());
    week.strength(STOCK.strength(0.8));
    week.hours(8.5);
    week.strength(1.50);
    week.hours(2);
    assertTrue(week.watch().standing().open().isEmpty());
  }

  @Test
  void aMuchTooWeakFirstDayIsADriftFromTheRecipe() {
    Waterings week = waterings(line());
    week.strength(STOCK.strength(0.5));
    week.hours(9);
    DriftFinding open = week.watch().standing().open().orElseThrow();
    assertEquals(-50, open.sizePercent(), 2);
  }

  @Test
  void otherSourceWaterMovesWhatIsExpectedAndNotTheShare() {
    Waterings week = waterings(line());
    week.source(false);
    DriftStanding without = week.hours(8).watch().standing();
    assertEquals(1.50, without.expected(), 0.02);
    assertEquals(100, without.sharePercent(), 3);
  }

  @Test
  void aMeasuredStockIsNamedAsSuch() {
    FeedLine line =
        NurseryWeek.glasshouse(List.of()).withStock(STOCK.measured(STOCK.strength(0.72), 100));
    DriftStanding standing = waterings(line).hours(1).watch().standing();
    assertEquals(DriftStanding.From.STOCK, standing.from());
    assertEquals(STOCK.strength(0.9), standing.expected(), 0.01);
  }

  @Test
  void withoutRecipeItLearnsAndSaysSo() {
    FeedLine plain = NurseryWeek.glasshouse(List.of());
    assertEquals(DriftStanding.From.NOTHING, waterings(plain).hours(1).watch().standing().from());
    assertEquals(DriftStanding.From.LEARNT, waterings(plain).hours(20).watch().standing().from());
    FeedLine strengths = NurseryWeek.glasshouse(List.of(1.50));
    assertEquals(
        DriftStanding.From.LEARNT, waterings(strengths).hours(20).watch().standing().from());
  }

  @Test
  void thePartAddedByFeedIsAStrengthToo() {
    FeedLine added = NurseryWeek.glasshouse(List.of()).withStrengths(List.of(), List.of(1.04));
    Waterings week = waterings(added).hours(20);
    assertEquals(1.50, week.watch().standing().expected(), 0.02);
    assertTrue(week.findings().stream().noneMatch(f -> f.kind() == Kind.STRENGTH_LEARNT));
  }

  @Test
  void aSagAtTheEdgeOfAStrengthIsNoStrengthOfItsOwn() {
    for (double share : new double[] {0.84, 0.85, 0.86, 0.87}) {
      Waterings week = waterings(NurseryWeek.glasshouse(List.of(1.50))).hours(24);
      week.strength(0.46 + 1.04 * share);
      week.hours(16);
      assertTrue(week.findings().stream().noneMatch(f -> f.kind() == Kind.STRENGTH_LEARNT));
      assertEquals(
          Stage.ALARM, week.watch().standing().open().orElseThrow().stage(), () -> "" + share);
    }
  }

  @Test
  void goesOnOverARestart() {
    Waterings week = waterings(line()).hours(24);
    DriftStanding before = week.watch().standing();
    week.use(DriftWatch.resume(week.watch().feedLine(), week.watch().state()));
    assertEquals(before.ratio(), week.watch().standing().ratio());
    assertEquals(before.plusMinusPercent(), week.watch().standing().plusMinusPercent());
  }
}
