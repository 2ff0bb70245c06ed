package feedwitness.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Dialog;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.ColorScheme;
import feedwitness.app.NurseryUnderTest;
import feedwitness.app.ServiceUnderTest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The way through a check with a phone in the hand, at a probe of the virtual nursery. */
@Timeout(300)
class CheckPageTest {
  private static final Instant SUNDAY = Instant.parse("2026-06-07T09:00:00Z");
  private static final int PACE = 30;
  private static final double PATIENCE_MILLIS = 60_000;

  @TempDir Path folder;
  private NurseryUnderTest nursery;
  private ServiceUnderTest service;

  @BeforeEach
  void open() throws Exception {
    nursery = NurseryUnderTest.open(folder, SUNDAY, PACE);
    service =
        nursery.start(
            """
            [[point]]
            name = "tank"
            title = "Mixing tank"
            place = "tank"
            port = "{bus}"
            profile = "modbus-float"
            unit = 11
            [[standard]]
            name = "low"
            solution = "KCl 0.01 mol/L"
            lot = "QE-A07"
            certificate-percent = 0.5
            [[standard]]
            name = "high"
            solution = "KCl 0.02 mol/L"
            lot = "QE-C11"
            certificate-percent = 0.5
            expires = 2026-05-31
            """);
  }

  @AfterEach
  void close() {
    service.close();
    nursery.close();
  }

  private static LocatorAssertions patiently(Locator locator) {
    return assertThat(locator);
  }

  private static void contains(Locator locator, String text) {
    patiently(locator)
        .containsText(
            text, new LocatorAssertions.ContainsTextOptions().setTimeout(PATIENCE_MILLIS));
  }

  private static void press(Page page, String step) {
    page.locator("[data-step=" + step + "]").click();
  }

  private void measure(Page page, String standard, int results) {
    nursery.itself().begin("tank in-standard +60m " + standard);
    press(page, "rinsed");
    press(page, "immersed");
    patiently(page.locator("[data-results] li"))
        .hasCount(results, new LocatorAssertions.HasCountOptions().setTimeout(PATIENCE_MILLIS));
  }

  /** As printed; every sheet is an object of its own in the document. */
  private static long sheets(Page page) {
    String document =
        new String(page.pdf(new Page.PdfOptions().setFormat("A4")), StandardCharsets.ISO_8859_1);
    return Pattern.compile("/Type\\s*/Page\\b").matcher(document).results().count();
  }

  @Test
  void leadsFromAFailureToAPassAndItsRecordOnAPhone() {
    nursery.itself().begin("tank adjust -6%");
    try (BrowserPage window = new BrowserPage(service.page(), 390, 844, ColorScheme.LIGHT)) {
      Page page = window.page();
      page.onDialog(Dialog::accept);
      contains(page.locator("article[data-point=tank]"), "mS/cm");
      page.locator("nav a[href='#more']").click();
      page.locator("a[href='#checks']").click();
      contains(page.locator("[data-bottle=high]"), "expired on 2026-05-31");
      page.locator("[data-subject='probe.tank'] a").click();
      page.locator("input[value=low]").check();
      page.locator("input[value=high]").check();
      page.locator("[data-begin] [data-who]").fill("Kim");
      page.locator("[data-begin] button:has-text('Begin')").first().click();
      contains(page.locator("[data-objections]"), "expired");
      page.locator("[data-anyway]").click();
      contains(page.locator("[data-guide]"), "Rinse the probe");
      double height = page.locator("[data-step=rinsed]").boundingBox().height;
      assertEquals(true, height >= 56, "a wet thumb needs more than " + height + " px");
      measure(page, "1.413mS/cm", 1);
      measure(page, "2.77mS/cm", 2);
      contains(page.locator("[data-check-verdict]"), "Fail");
      window.expectNoSidewaysScrolling();
      press(page, "cleaned");
      measure(page, "1.413mS/cm", 3);
      measure(page, "2.77mS/cm", 4);
      press(page, "adjust");
      measure(page, "1.413mS/cm", 5);
      measure(page, "2.77mS/cm", 6);
      contains(page.locator("[data-check-verdict]"), "Pass");
      press(page, "finish");
      press(page, "returned");
      contains(page.locator("[data-doubted]"), "likely error");
      assertThat(page.locator("[data-check-chart] .dot")).hasCount(3);
      window.expectNoSidewaysScrolling();
      assertEquals(List.of(), new AxeBuilder(page).analyze().getViolations());
      page.locator(".past .check-list a").first().click();
      contains(page.locator("[data-record]"), "lot QE-C11");
      contains(page.locator("[data-record]"), "Adjusted");
      window.expectNoSidewaysScrolling();
      assertEquals(1, sheets(page), "a record is one sheet in the file");
      page.navigate(service.page() + "#history/tank");
      page.locator("input[name=corrected]").check();
      contains(page.locator("[data-marks]"), "a later check found the probe");
      page.locator("[data-chart]").press("PageUp");
      window.expectNoComplaints();
    }
  }

  private void passThePen() throws Exception {
    String pen = "/api/v1/checks/meter/pen";
    service.post(
        pen + "/begin",
        "{\"who\":\"Kim\",\"standards\":[\"low\",\"high\"],\"confirmed\":true}",
        201);
    for (double shown : new double[] {1.41, 2.77}) {
      service.post(pen + "/step", "{\"who\":\"Kim\",\"step\":\"rinsed\"}", 200);
      service.post(pen + "/step", "{\"who\":\"Kim\",\"step\":\"immersed\"}", 200);
      service.post(
          pen + "/step",
          "{\"who\":\"Kim\",\"step\":\"reading\",\"conductivity_mS_cm\":%s,\"temperature_c\":22}"
              .formatted(shown),
          200);
    }
    service.post(pen + "/step", "{\"who\":\"Kim\",\"step\":\"finish\"}", 200);
  }

  private static void open(Page page, String words) {
    page.locator("button:has-text('" + words + "')").click();
  }

  @Test
  void comparesAFixedProbeWithASampleAndAThermometerOnAPhone() throws Exception {
    try (BrowserPage window = new BrowserPage(service.page(), 390, 844, ColorScheme.LIGHT)) {
      Page page = window.page();
      contains(page.locator("article[data-point=tank]"), "mS/cm");
      page.navigate(service.page() + "#checks/probe.tank");
      open(page, "Compare without taking it out");
      contains(page.locator("[data-meters]"), "No handheld meter is on record");
      passThePen();
      contains(page.locator("[data-meters]"), "passed its last check");
      Locator form = page.locator("[data-compare]");
      Locator compare = form.locator("button:has-text('Compare')");
      contains(form.locator("[data-reads-now]"), "The probe reads");
      compare.click();
      contains(form.locator("[data-error=conductivity25_mS_cm]"), "nothing is typed");
      double reads =
          service.get("/api/v1/points/tank").path("conductivity25_mS_cm").asDouble() * 0.9;
      form.locator("[name=conductivity25_mS_cm]").fill("%.2f".formatted(reads).replace('.', ','));
      form.locator("[name=temperature_c]").fill("18.5");
      form.locator("[data-who]").fill("Kim");
      window.expectNoSidewaysScrolling();
      assertEquals(List.of(), new AxeBuilder(page).analyze().getViolations());
      double height = compare.boundingBox().height;
      assertEquals(true, height >= 56, "a wet thumb needs more than " + height + " px");
      compare.click();
      contains(page.locator("[data-compared]"), "% high");
      contains(page.locator("[data-comparison]").first(), "fail");
      assertThat(page.locator("[data-check-chart] .dot")).hasCount(1);
      open(page, "Compare without taking it out");
      form.locator("label:has([value=thermometer])").click();
      form.locator("[name=thermometer]").fill("glass 7");
      form.locator("[name=accuracy_k]").fill("0.1");
      form.locator("[name=temperature_c]").fill("400");
      compare.click();
      contains(form, "makes no sense");
      form.locator("[name=temperature_c]").fill("30");
      compare.click();
      contains(page.locator("[data-comparison]").first(), "Reference thermometer (glass 7)");
      window.expectNoSidewaysScrolling();
      assertEquals(List.of(), new AxeBuilder(page).analyze().getViolations());
      window.expectNoComplaints();
    }
  }

  @Test
  void logsThatTheProbeWasReplaced() {
    try (BrowserPage window = new BrowserPage(service.page(), 390, 844, ColorScheme.LIGHT)) {
      Page page = window.page();
      contains(page.locator("article[data-point=tank]"), "mS/cm");
      page.navigate(service.page() + "#checks/probe.tank");
      open(page, "The probe was replaced");
      Locator form = page.locator("[data-replaced]");
      form.locator("[name=what]").fill("new cell, serial 4711");
      form.locator("[data-who]").fill("Kim");
      window.expectNoSidewaysScrolling();
      assertEquals(List.of(), new AxeBuilder(page).analyze().getViolations());
      open(page, "Log that it was replaced");
      contains(page.locator("[data-standing]"), "Not checked since it was replaced");
      assertThat(form).isHidden();
      window.expectNoComplaints();
    }
  }
}
