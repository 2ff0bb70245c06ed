package feedwitness.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.feed.FeedStock;
import feedwitness.site.DriftLimits;
import feedwitness.site.FeedLine;
import feedwitness.site.Mixer;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Feed lines as a grower writes them; a table that follows the points begins on line 11. */
class FeedLineReadingTest {
  private static final String POINTS =
      """
      [[point]]
      name = "source"
      place = "source"
      [[point]]
      name = "line"
      place = "line"
      """;

  @TempDir private Path folder;

  private FeedLine read(String table) {
    return new Desk(folder)
        .right(Desk.NURSERY + POINTS + "[[feed-line]]\n" + table)
        .config()
        .site()
        .feedLines()
        .get(0);
  }

  private void fault(String table, String place, String... words) {
    new Desk(folder).fault(Desk.NURSERY + POINTS + "[[feed-line]]\n" + table, place, words);
  }

  @Test
  void readsAGlasshouseLine() {
    FeedLine line =
        read(
            """
            name = "glasshouse"
            title = "Glasshouse line"
            source = "source"
            line = "line"
            ratio = 80
            strengths = ["1.95 mS/cm", "800 µS/cm", "1.50 mS/cm"]
            source-strength = "0.46 mS/cm"
            notice-percent = 4
            alarm-percent = 8
            false-alarms = "about one a season"
            """);
    assertEquals(new Mixer.Injector(80), line.mixer());
    assertEquals(List.of(0.8, 1.5, 1.95), line.strengths());
    assertEquals(0.46, line.sourceStrength());
    assertEquals(new DriftLimits(4, 8, DriftLimits.FalseAlarms.SEASON), line.limits());
  }

  @Test
  void nameAndLineAreEnough() {
    FeedLine line = read("name = \"bed\"\nline = \"line\"\n");
    assertEquals(DriftLimits.USUAL, line.limits());
    assertEquals(new Mixer.None(), line.mixer());
    assertTrue(line.source().isEmpty() && line.strengths().isEmpty());
    assertEquals(new Mixer.Siphon(4), read("name = \"bed\"\nline = \"line\"\ndial = 4\n").mixer());
  }

  @Test
  void tellsEachFaultWithItsPlaceAndRemedy() {
    String good = "name = \"g\"\nline = \"line\"\n";
    fault("name = \"g\"\n", "11:1", "feed-line 'g'", "'line' is missing");
    fault("name = \"g\"\nline = \"lien\"\n", "13:1", "no measuring point 'lien'", "'line'?");
    fault(good + "ratio = 0\n", "14:1", "0.0 litres of feed", "for example 80");
    fault(good + "ratio = 80\ndial = 3\n", "15:1", "both given", "ratio for an injector");
    fault(good + "dial = 0\n", "14:1", "dial 0.0 is not above 0");
    fault(good + "source = \"line\"\n", "14:1", "source and line are both point 'line'");
    fault(good + "strengths = [\"1.50\"]\n", "14:1", "1.50", "number and unit");
    fault(good + "strengths = [1.5]\n", "14:1", "0 of them text", "quotation marks");
    fault(good + "strengths = [\"1.50 mS/cm\", \"1.55 mS/cm\"]\n", "14:1", "closer than 10 %");
    fault(
        good + "source-strength = \"0.46 mS/cm\"\nstrengths = [\"0.40 mS/cm\"]\n",
        "15:1",
        "not above the source water's 0.46 mS/cm");
    fault(good + "alarm-percent = 4\n", "14:1", "must be above the notice from 5.0 %");
    fault(good + "notice-percent = 0.2\n", "14:1", "0.2 % is outside 1 to 50 %");
    fault(good + "false-alarms = \"never\"\n", "14:1", "about one a month");
    fault(good + "ration = 80\n", "14:1", "did you mean 'ratio'?");
  }

  private static final String RECIPE =
      """
      title = "House Feed, growing on"
      [water]
      measured = "0.46 mS/cm"
      [goal]
      strength = "1.50 mS/cm"
      frequency = "every watering"
      [[use]]
      product = "house-feed"
      [stock]
      volume = "200 L"
      makes = 80
      coldest-night = "8 °C"
      """;

  @Test
  void aRecipeSaysWhatTheLineShouldCarry() {
    new Desk(folder).write("growing-on.toml", RECIPE);
    FeedLine line =
        read("name = \"g\"\nline = \"line\"\nratio = 80\nrecipe = \"growing-on.toml\"\n");
    FeedStock stock = line.stock().orElseThrow();
    assertEquals("House Feed, growing on", stock.title());
    assertEquals(1.5, stock.strength(line.shareAsSet().orElseThrow()), 0.005);
    assertEquals(0.46, line.sourceStrength(), 0.001);
  }

  @Test
  void aMeasuredStockSaysItWithOrWithoutARecipe() {
    new Desk(folder).write("growing-on.toml", RECIPE);
    String good = "name = \"g\"\nline = \"line\"\nratio = 80\nstock-reads = \"1.29 mS/cm\"\n";
    FeedLine by = read(good + "recipe = \"growing-on.toml\"\n");
    assertEquals(80, by.stock().orElseThrow().makes(), 0.6);
    assertTrue(by.stock().orElseThrow().measured());
    FeedLine without = read(good + "source-strength = \"0.46 mS/cm\"\n");
    FeedStock stock = without.stock().orElseThrow();
    assertEquals(1.5, stock.strength(without.shareAsSet().orElseThrow()), 0.02);
  }

  @Test
  void tellsWhatIsWrongWithRecipeAndStockWhereItStands() {
    String good = "name = \"g\"\nline = \"line\"\nratio = 80\n";
    new Desk(folder).write("growing-on.toml", RECIPE.replace("house-feed", "hose-feed"));
    new Desk(folder).write("feedwitness.toml", config(good + "recipe = \"growing-on.toml\"\n"));
    new Desk(folder)
        .only(
            Desk.wrong(new Desk(folder).read()),
            "growing-on.toml:8:1",
            "hose-feed",
            "did you mean house-feed?");
    fault(good + "recipe = \"nowhere.toml\"\n", "15:1", "'nowhere.toml' is not there", "beside");
    fault(good + "stock-dilution = 100\n", "15:1", "without 'stock-reads'");
    fault(good + "stock-reads = \"1.29 mS/cm\"\n", "11:1", "'source-strength' is missing");
    fault(good + "stock-reads = \"1.29\"\n", "15:1", "number and unit");
    fault(
        good + "stock-reads = \"0.40 mS/cm\"\nsource-strength = \"0.46 mS/cm\"\n",
        "15:1",
        "the water alone has 0.46 mS/cm");
    fault("name = \"g\"\nline = \"line\"\nstock-reads = \"1.29 mS/cm\"\n", "14:1", "write ratio");
    fault(good + "second = \"line\"\n", "15:1", "second and line are both point 'line'");
  }

  private static String config(String table) {
    return Desk.NURSERY + POINTS + "[[feed-line]]\n" + table;
  }

  @Test
  void twoFeedLinesOfOneNameAreRefused() {
    fault(
        "name = \"g\"\nline = \"line\"\n[[feed-line]]\nname = \"g\"\nline = \"source\"\n",
        "15:1",
        "another feed line has this name");
  }
}
