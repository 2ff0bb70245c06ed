package feedwitness.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.ColorScheme;
import feedwitness.app.ServiceUnderTest;
import feedwitness.quantity.Octets;
import feedwitness.simulate.PseudoTerminal;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The first probe, set up on the page without an editor. */
@Timeout(180)
class FirstProbeTest {
  private static final double PATIENCE_MILLIS = 30_000;

  @TempDir Path folder;

  @Test
  void leadsFromAnEmptyServiceToAReadingProbe() throws Exception {
    Path cables = Files.createDirectory(folder.resolve("by-id"));
    try (PseudoTerminal instrument = PseudoTerminal.open()) {
      Path stable = cables.resolve("usb-borehole-probe");
      Files.createSymbolicLink(stable, instrument.slavePath());
      Thread speech = new Thread(() -> speak(instrument), "instrument");
      speech.start();
      try (ServiceUnderTest service = ServiceUnderTest.startEmpty(folder.resolve("data"), cables);
          BrowserPage window = new BrowserPage(service.page(), 390, 844, ColorScheme.LIGHT)) {
        walkThrough(window.page(), service, stable);
        assertTrue(
            Files.readString(folder.resolve("data/feedwitness.generated.toml"))
                .contains("name = \"borehole\""));
        window.expectNoComplaints();
      }
      speech.interrupt();
      speech.join();
    }
  }

  private static void walkThrough(Page page, ServiceUnderTest service, Path stable) {
    page.navigate(service.page() + "#setup");
    Locator form = page.locator("form[data-setup]");
    form.locator("label:has(input[name=link][value='" + stable + "'])").click();
    form.locator("select[name=profile]").selectOption("pushed-csv");
    form.locator("button:has-text('Listen')").click();
    assertThat(page.locator("[data-preview] li[data-understood=true]").first())
        .containsText(
            "462.3", new LocatorAssertions.ContainsTextOptions().setTimeout(PATIENCE_MILLIS));
    form.locator("label:has(input[name=place][value=source])").click();
    form.locator("input[name=title]").fill("Borehole");
    form.locator("input[name=name]").click();
    form.locator("input[name=name]").fill("borehole");
    form.locator("label:has(input[name=compensation][value=iso7888])").click();
    form.locator(".buttons button").click();
    Locator card = page.locator("article[data-point=borehole]");
    assertThat(card)
        .hasAttribute(
            "data-state",
            "reading",
            new LocatorAssertions.HasAttributeOptions().setTimeout(PATIENCE_MILLIS));
  }

  private static void speak(PseudoTerminal instrument) {
    try {
      for (int i = 0; i < 600; i++) {
        instrument.write(Octets.ofText("462.3,24.90\r\n"));
        Thread.sleep(200);
      }
    } catch (Exception e) {
      Thread.currentThread().interrupt();
    }
  }
}
