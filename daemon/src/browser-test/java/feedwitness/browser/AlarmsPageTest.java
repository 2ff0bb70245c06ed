package feedwitness.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.FilePayload;
import feedwitness.app.NurseryUnderTest;
import feedwitness.app.ServiceUnderTest;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** An alarm from the water to a thumb, and what the journal keeps of it. */
@Timeout(240)
class AlarmsPageTest {
  private static final Instant TUESDAY = Instant.parse("2026-06-02T09:00:00Z");
  private static final double PATIENCE_MILLIS = 60_000;

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
            name = "source"
            title = "Borehole"
            place = "source"
            port = "{source}"
            profile = "pushed-csv"
            compensation = "iso7888"
            conductivity-high = "0.20 mS/cm"
            [[point]]
            name = "line"
            title = "Glasshouse line"
            place = "line"
            port = "{bus}"
            profile = "modbus-scaled"
            unit = 12
            [[strength]]
            name = "growing-on"
            title = "Growing on"
            point = "line"
            conductivity = "1.50 mS/cm"
            [[alarm]]
            kind = "conductivity-high"
            on-delay = "2s"
            """);
  }

  @AfterEach
  void close() {
    service.close();
    nursery.close();
  }

  private static LocatorAssertions.ContainsTextOptions patiently() {
    return new LocatorAssertions.ContainsTextOptions().setTimeout(PATIENCE_MILLIS);
  }

  @Test
  void anAlarmIsAnsweredWithOneThumbAndTheAnswerCanBeTakenBack() {
    try (BrowserPage window = new BrowserPage(service.page(), 390, 844, ColorScheme.LIGHT)) {
      Page page = window.page();
      page.navigate(service.page() + "#alarms");
      Locator alarm = page.locator("article.alarm[data-alarm='source/conductivity-high']");
      assertThat(alarm.locator("h3")).containsText("Borehole", patiently());
      assertThat(page.locator("[data-lead]")).containsText("One alarm needs an answer");
      assertThat(page.locator("[data-alarm-count]")).containsText("1");
      Locator answer =
          alarm.locator("button", new Locator.LocatorOptions().setHasText("I see to it"));
      assertEquals(true, answer.boundingBox().height >= 56, "a wet thumb needs 56 px");
      answer.click();
      assertThat(page.locator("#page-alarms .error").first()).containsText("no name given");
      page.locator("#page-alarms [data-who]").fill("Kim");
      answer.click();
      assertThat(alarm).containsText("nswered by Kim", patiently());
      assertThat(page.locator("[data-lead]")).containsText("Nothing needs an answer");
      alarm
          .locator("button", new Locator.LocatorOptions().setHasText("Take the answer back"))
          .click();
      assertThat(page.locator("[data-lead]"))
          .containsText("One alarm needs an answer", patiently());
      window.expectNoSidewaysScrolling();
      assertEquals("[]", new AxeBuilder(page).analyze().getViolations().toString());
      window.expectNoComplaints();
    }
  }

  @Test
  void aNoteWithAPhotoStandsInTheJournal() throws Exception {
    try (BrowserPage window = new BrowserPage(service.page(), 390, 844, ColorScheme.DARK)) {
      Page page = window.page();
      page.navigate(service.page() + "#journal");
      page.locator(".journal-form > button").click();
      page.locator("#journal-text").fill("Flushed the line");
      page.locator("#journal-plants").fill("leaf edges brown");
      page.locator("#journal-photo")
          .setInputFiles(new FilePayload("leaf.png", "image/png", photo()));
      page.locator("#page-journal [data-who]").fill("Kim");
      page.locator(".journal-form .buttons button").click();
      Locator entry = page.locator("article.entry[data-kind=note]").first();
      assertThat(entry).containsText("Flushed the line", patiently());
      assertThat(entry).containsText("leaf edges brown");
      assertThat(entry).containsText("Kim");
      assertThat(entry.locator("img")).isVisible();
      Object wide = entry.locator("img").evaluate("i => i.decode().then(() => i.naturalWidth)");
      assertEquals(1600, ((Number) wide).intValue(), "a photo is made smaller before it is sent");
      window.expectNoSidewaysScrolling();
      assertEquals("[]", new AxeBuilder(page).analyze().getViolations().toString());
      window.expectNoComplaints();
    }
  }

  @Test
  void oneTapSaysWhatRunsAndTheBandFollows() {
    try (BrowserPage window = new BrowserPage(service.page(), 1280, 900, ColorScheme.LIGHT)) {
      Page page = window.page();
      Locator line = page.locator("article[data-point=line]");
      assertThat(line.locator("[data-feeding]")).containsText("Nobody said", patiently());
      line.locator(".feeding summary").click();
      line.locator(".feeding [data-who]").fill("Kim");
      line.locator(".feeding button", new Locator.LocatorOptions().setHasText("Growing on"))
          .click();
      assertThat(line.locator("[data-feeding]")).containsText("Growing on since", patiently());
      assertThat(line.locator("[data-feeding]")).containsText("1.35 to 1.65 mS/cm");
      assertThat(line.locator(".ruler .plan"))
          .hasAttribute(
              "visibility",
              "visible",
              new LocatorAssertions.HasAttributeOptions().setTimeout(PATIENCE_MILLIS));
      window.expectNoComplaints();
    }
  }

  /** Larger than is kept. */
  private static byte[] photo() throws IOException {
    BufferedImage image = new BufferedImage(3_200, 1_800, BufferedImage.TYPE_INT_RGB);
    for (int x = 0; x < image.getWidth(); x++) {
      for (int y = 0; y < image.getHeight(); y += 3) {
        image.setRGB(x, y, (x * 31 + y * 17) & 0xffffff);
      }
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, "png", out);
    return out.toByteArray();
  }
}
