package feedwitness.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.AxeResults;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.ColorScheme;
import feedwitness.app.NurseryUnderTest;
import feedwitness.app.ServiceUnderTest;
import feedwitness.simulate.Wire;
import java.nio.file.Path;
import java.time.Instant;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** From the nursery's pseudo-terminals through service, H2 and HTTP to what a person sees. */
@Timeout(180)
class NurseryPageTest {
  private static final Instant TUESDAY = Instant.parse("2026-06-02T09:00:00Z");
  private static final double PATIENCE_MILLIS = 30_000;

  @TempDir Path folder;
  private NurseryUnderTest nursery;
  private ServiceUnderTest service;

  @BeforeEach
  void open() throws Exception {
    nursery = NurseryUnderTest.open(folder, TUESDAY, 10);
    service =
        nursery.start(
            """
            [[point]]
            name = "line"
            title = "Glasshouse line"
            place = "line"
            port = "{bus}"
            profile = "modbus-scaled"
            unit = 12
            [[point]]
            name = "source"
            title = "Borehole"
            place = "source"
            port = "{source}"
            profile = "pushed-csv"
            compensation = "iso7888"
            [[point]]
            name = "drain"
            title = "Run-off"
            place = "drain"
            """);
  }

  @AfterEach
  void close() {
    service.close();
    nursery.close();
  }

  @Test
  void showsTheStrengthOfTheLineOnAPhone() {
    try (BrowserPage window = new BrowserPage(service.page(), 390, 844, ColorScheme.LIGHT)) {
      Locator line = window.page().locator("article[data-point=line]");
      becomes(line, "data-state", "reading");
      Locator figure = line.locator("[data-figure]");
      assertThat(figure).containsText(Pattern.compile("\\d\\.\\d\\d"));
      double pixels =
          ((Number) figure.evaluate("e => parseFloat(getComputedStyle(e).fontSize)")).doubleValue();
      assertTrue(pixels >= 80, "two metres away a figure of " + pixels + " px is too small");
      assertThat(line).containsText("mS/cm");
      assertThat(line.locator("[data-temperature]")).containsText("°C");
      assertThat(line.locator("[data-age]")).containsText("ago");
      window.expectNoSidewaysScrolling();
      window.expectNoComplaints();
    }
  }

  @Test
  void saysThatACableWasPulledAndRecoversWithoutAReload() {
    try (BrowserPage window = new BrowserPage(service.page(), 1280, 900, ColorScheme.LIGHT)) {
      Locator line = window.page().locator("article[data-point=line]");
      becomes(line, "data-state", "reading");
      nursery.itself().unplug(Wire.BUS);
      becomes(line, "data-state", "missing");
      assertThat(window.page().locator(".answer").first()).containsText("plug it in again");
      assertThat(line.locator("[data-figure]")).containsText(Pattern.compile("\\d\\.\\d\\d"));
      becomes(window.page().locator("article[data-point=source]"), "data-state", "reading");
      nursery.itself().replug(Wire.BUS);
      becomes(line, "data-state", "reading");
      window.expectNoComplaints();
    }
  }

  @Test
  void takesAnyNumberApartOnTheCardAndInTheChart() {
    try (BrowserPage window = new BrowserPage(service.page(), 1280, 900, ColorScheme.LIGHT)) {
      Page page = window.page();
      Locator line = page.locator("article[data-point=line]");
      becomes(line, "data-state", "reading");
      line.locator(".basis > summary").click();
      assertThat(line.locator("[data-step=octets]")).containsText("The instrument sent");
      assertThat(line.locator("[data-step=compensation]")).containsText("referred to 25 °C");
      assertThat(line.locator("[data-budget] tbody tr")).hasCount(6);
      window.expectNoSidewaysScrolling();
      becomes(page.locator("article[data-point=line]"), "data-state", "reading");
      page.navigate(service.page() + "#history/line");
      Locator chart = page.locator("[data-chart]");
      becomes(chart, "data-gaps", "0");
      chart.locator("canvas").first().waitFor();
      chart.focus();
      page.keyboard().press("ArrowLeft");
      page.locator("[data-explain]").click();
      assertThat(page.locator("[data-explained] [data-step=indication]")).containsText("µS/cm");
      AxeResults faults = new AxeBuilder(page).analyze();
      assertEquals(0, faults.getViolations().size(), () -> faults.getViolations().toString());
      window.expectNoComplaints();
    }
  }

  @Test
  void drawsHistoryWithAGapWhereThereWasOne() throws Exception {
    String line = "/api/v1/points/line";
    service.await(line, p -> p.path("state").asText().equals("reading"));
    Thread.sleep(2000);
    nursery.itself().unplug(Wire.BUS);
    service.await(line, p -> p.path("state").asText().equals("missing"));
    Thread.sleep(8000);
    nursery.itself().replug(Wire.BUS);
    service.await(line, p -> p.path("state").asText().equals("reading"));
    Thread.sleep(2000);
    try (BrowserPage window = new BrowserPage(service.page(), 1280, 900, ColorScheme.LIGHT)) {
      Page page = window.page();
      page.navigate(service.page() + "#history/line");
      Locator chart = page.locator("[data-chart]");
      assertThat(chart)
          .hasAttribute(
              "data-gaps",
              "1",
              new LocatorAssertions.HasAttributeOptions().setTimeout(PATIENCE_MILLIS));
      int points = Integer.parseInt(String.valueOf(chart.getAttribute("data-points")));
      assertTrue(points > 5, points + " points");
      for (String range : new String[] {"6h", "1d", "1w", "1m", "season"}) {
        page.locator("label:has(input[name=range][value='" + range + "'])").click();
        assertThat(chart).hasAttribute("data-points", Pattern.compile("[1-9]\\d*"));
      }
      window.expectNoComplaints();
    }
  }

  @Test
  void takesAReadingTypedByHand() {
    try (BrowserPage window = new BrowserPage(service.page(), 390, 844, ColorScheme.DARK)) {
      Locator drain = window.page().locator("article[data-point=drain]");
      drain.locator("button:has-text('Type a reading')").click();
      drain.locator("input[name=conductivity]").fill("1,85");
      drain.locator("input[name=temperature]").fill("20");
      drain.locator(".buttons button").click();
      becomes(drain, "data-state", "reading");
      assertThat(drain.locator("[data-figure]")).containsText(Pattern.compile("[12]\\.\\d\\d"));
      window.expectNoComplaints();
    }
  }

  @Test
  void canBeUsedByEverybody() {
    for (ColorScheme scheme : new ColorScheme[] {ColorScheme.LIGHT, ColorScheme.DARK}) {
      try (BrowserPage window = new BrowserPage(service.page(), 390, 844, scheme)) {
        becomes(window.page().locator("article[data-point=line]"), "data-state", "reading");
        for (String view : new String[] {"#now", "#history", "#messages", "#setup"}) {
          window.page().navigate(service.page() + view);
          window.page().waitForTimeout(500);
          AxeResults results = new AxeBuilder(window.page()).analyze();
          assertEquals(
              "", results.getViolations().toString().replace("[]", ""), view + " " + scheme);
          window.expectNoSidewaysScrolling();
        }
        window.expectNoComplaints();
      }
    }
  }

  private static void becomes(Locator element, String attribute, String value) {
    assertThat(element)
        .hasAttribute(
            attribute,
            value,
            new LocatorAssertions.HasAttributeOptions().setTimeout(PATIENCE_MILLIS));
  }
}
