package feedwitness.feed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** A known feed solved back from what the line carries. */
class FeedStockTest {
  private static final Mixer MIXER = new Mixer();

  /** House Feed 1:80 in the borehole water of Quarry End, 1.50 mS/cm. */
  private static final FeedStock HOUSE_FEED =
      MIXER
          .feed(
              Map.of(
                  "title", "House Feed, growing on",
                  "water", Map.of("measured", "0.46 mS/cm"),
                  "goal", Map.of("strength", "1.50 mS/cm", "frequency", "every watering"),
                  "use", List.of(Map.of("product", "house-feed")),
                  "stock", Map.of("volume", "200 L", "makes", 80, "coldest-night", "8 °C")))
          .orElseThrow();

  @Test
  void carriesWhatTheRecipeWantsAtItsOwnRatio() {
    assertEquals(1.50, HOUSE_FEED.strength(1), 0.002);
    assertEquals(0.46, HOUSE_FEED.water(), 0.001);
    assertEquals(80, HOUSE_FEED.makes());
    assertTrue(HOUSE_FEED.uncertainty() > 0.01 && HOUSE_FEED.uncertainty() < 0.06);
  }

  @Test
  void readsASagOfTenPercentAsTenPercentWhereTheDifferenceAloneReadsLess() {
    double sagged = HOUSE_FEED.strength(0.9);
    double byDifference = (sagged - 0.46) / (HOUSE_FEED.strength(1) - 0.46);
    assertTrue(byDifference > 0.901, () -> "" + byDifference);
    assertEquals(0.9, HOUSE_FEED.share(sagged) / HOUSE_FEED.share(HOUSE_FEED.strength(1)), 1e-6);
  }

  @Property
  void isSolvedBackToWhatWasDelivered(@ForAll @DoubleRange(min = 0, max = 4) double share) {
    assertEquals(share, HOUSE_FEED.share(HOUSE_FEED.strength(share)), 1e-9);
  }

  @Test
  void aMeasuredStockCountsBeforeTheWeighedOne() {
    double right = HOUSE_FEED.strength(0.8);
    assertEquals(80, HOUSE_FEED.measured(right, 100).makes(), 0.1);
    FeedStock weak = HOUSE_FEED.measured(HOUSE_FEED.strength(0.72), 100);
    assertEquals(72, weak.makes(), 0.1);
    assertTrue(weak.measured());
    assertFalse(HOUSE_FEED.measured());
    assertEquals(0.028, weak.uncertainty(), 0.001);
  }

  @Test
  void withoutARecipeAMeasuredStockOfUnknownSaltsIsWithinAPercent() {
    FeedStock unknown = MIXER.measuredStock(0.46, HOUSE_FEED.strength(0.8), 100);
    assertEquals(1.50, unknown.strength(unknown.makes() / 80), 0.015);
  }

  @Test
  void refusesAStockThatReadsAsTheWaterOrBeyondTheModel() {
    IllegalArgumentException weak =
        assertThrows(IllegalArgumentException.class, () -> HOUSE_FEED.measured(0.4, 100));
    assertTrue(weak.toString().contains("the water alone has 0.46 mS/cm"), weak::toString);
    IllegalArgumentException strong =
        assertThrows(IllegalArgumentException.class, () -> HOUSE_FEED.measured(40, 100));
    assertTrue(strong.toString().contains("let the stock down further"), strong::toString);
  }

  @Test
  void aRecipeAtFaultMixesNothing() {
    assertTrue(MIXER.feed(Map.of("title", "empty")).isEmpty());
  }
}
