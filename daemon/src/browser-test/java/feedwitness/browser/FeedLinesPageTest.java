package feedwitness.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.ColorScheme;
import feedwitness.app.ServiceUnderTest;
import feedwitness.app.WateredLine;
import feedwitness.quantity.TimeSource;
import feedwitness.simulate.SimulatedClock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A feed line on the page, after a day on which the injector began to sag at half past one. */
@Timeout(180)
class FeedLinesPageTest {
  private static final double PATIENCE_MILLIS = 30_000;
  private static final String LINE =
      """
      title = "Glasshouse, from the stock barrel"
      ratio = 80
      recipe = "growing-on.toml"
      """;
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

  @TempDir Path folder;
  private ServiceUnderTest service;

  @BeforeEach
  void open() throws Exception {
    Files.writeString(folder.resolve("growing-on.toml"), RECIPE);
    Instant end;
    try (WateredLine line = new WateredLine(folder, LINE)) {
      end = line.hours(7.5).delivering(0.86).hours(5).wall();
    }
    service =
        ServiceUnderTest.start(
            folder,
            WateredLine.tables(LINE),
            new SimulatedClock(TimeSource.system(), end.plusSeconds(60), 1),
            1);
  }

  @AfterEach
  void close() {
    service.close();
  }

  private static LocatorAssertions.ContainsTextOptions patiently() {
    return new LocatorAssertions.ContainsTextOptions().setTimeout(PATIENCE_MILLIS);
  }

  private static void isAccessible(Page page) {
    assertEquals("[]", new AxeBuilder(page).analyze().getViolations().toString());
  }

  @Test
  void saysOnAPhoneByHowMuchSinceWhenAndWhatWouldDecide() {
    try (BrowserPage window = new BrowserPage(service.page(), 390, 844, ColorScheme.LIGHT)) {
      Page page = window.page();
      page.navigate(service.page() + "#lines");
      Locator line = page.locator("[data-line=glasshouse]");
      assertThat(line.locator("[data-line-state]")).containsText("other than usual", patiently());
      Locator told = line.locator("[data-told]");
      assertThat(told).containsText("% less feed than normal");
      assertThat(told).containsText("that is sure");
      assertThat(told).containsText("It began");
      assertThat(told.locator("ol.todo li")).hasCount(3);
      assertThat(told.locator("ol.todo li").first()).containsText("Catch a cup at the line");
      Locator beside = line.locator("[data-beside]");
      assertThat(beside).containsText("solved from the recipe: House Feed, growing on");
      assertThat(beside).containsText("±");
      assertThat(beside).containsText("it should make");
      assertThat(beside).containsText("80 L");
      window.expectNoSidewaysScrolling();
      isAccessible(page);
      window.expectNoComplaints();
    }
  }

  @Test
  void isReadableInTheDarkAndOnADesk() {
    try (BrowserPage window = new BrowserPage(service.page(), 1280, 900, ColorScheme.DARK)) {
      Page page = window.page();
      page.navigate(service.page() + "#lines");
      Locator line = page.locator("[data-line=glasshouse]");
      assertThat(line.locator(".pipe")).containsText("1 L makes 80 L", patiently());
      assertThat(line.locator("svg").first()).isVisible();
      window.expectNoSidewaysScrolling();
      isAccessible(page);
      window.expectNoComplaints();
    }
  }

  @Test
  void aLoggedServiceIsLearntFromAnew() {
    try (BrowserPage window = new BrowserPage(service.page(), 390, 844, ColorScheme.DARK)) {
      Page page = window.page();
      page.navigate(service.page() + "#lines");
      Locator line = page.locator("[data-line=glasshouse]");
      assertThat(line.locator("[data-line-state]")).containsText("other than usual", patiently());
      line.locator("[data-log-change]").click();
      line.locator("form .buttons button").click();
      assertThat(line.locator("form")).containsText("nothing is chosen");
      line.locator("input[value=serviced]").check();
      line.locator("input[name=note], textarea[name=note]").fill("new check valve");
      line.locator("form [data-who]").fill("Kim");
      isAccessible(page);
      line.locator("form .buttons button").click();
      assertThat(line.locator("[data-line-state]"))
          .containsText("learning what is normal", patiently());
      line.locator("details summary").click();
      assertThat(line.locator(".line-log")).containsText("njector serviced: new check valve");
      assertThat(line.locator("[data-beside]")).containsText("solved from the recipe");
      window.expectNoSidewaysScrolling();
      window.expectNoComplaints();
    }
  }
}
