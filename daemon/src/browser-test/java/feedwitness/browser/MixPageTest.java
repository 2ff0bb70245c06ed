package feedwitness.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Media;
import feedwitness.app.ServiceUnderTest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A grower reckons a mix with a thumb, reads what is wrong in words, and prints the sheet. */
@Timeout(180)
class MixPageTest {
  private static final Pattern PAPER_PAGE = Pattern.compile("/Type\\s*/Page\\b");

  @TempDir Path folder;
  private ServiceUnderTest service;

  @BeforeEach
  void open() throws Exception {
    service = ServiceUnderTest.start(folder, "");
  }

  @AfterEach
  void close() {
    service.close();
  }

  private BrowserPage phone(ColorScheme scheme) {
    return openAt(390, 844, scheme);
  }

  private BrowserPage openAt(int width, int height, ColorScheme scheme) {
    BrowserPage window = new BrowserPage(service.page(), width, height, scheme);
    window.page().navigate(service.page() + "#mix");
    window.page().locator("select option[value=house-feed]").first().waitFor(attached());
    return window;
  }

  private static Locator.WaitForOptions attached() {
    return new Locator.WaitForOptions()
        .setState(com.microsoft.playwright.options.WaitForSelectorState.ATTACHED);
  }

  private static Locator field(Page page, String name) {
    return page.locator("form.mix [name=\"" + name + "\"]:visible");
  }

  private static Locator fault(Page page, String name) {
    return page.locator("form.mix [data-error=\"" + name + "\"]:visible");
  }

  private static void tap(Page page, String name, String value) {
    page.locator("form.mix label:has(input[name='" + name + "'][value='" + value + "'])").click();
  }

  private static void typeOneBag(Page page) {
    field(page, "use[1].product").selectOption("house-feed");
    field(page, "water.measured").fill("0.46");
    field(page, "goal.strength").fill("1.50");
    field(page, "make.volume").fill("600");
    field(page, "make.temperature").fill("14");
  }

  private static void expectForEverybody(BrowserPage window) {
    assertEquals("[]", new AxeBuilder(window.page()).analyze().getViolations().toString());
    window.expectNoSidewaysScrolling();
  }

  @Test
  void weighsOneBagForAStrengthWhileTyping() {
    try (BrowserPage window = phone(ColorScheme.LIGHT)) {
      Page page = window.page();
      assertThat(page.locator("[data-put-right]")).isVisible();
      expectForEverybody(window);
      typeOneBag(page);
      Locator grams = page.locator("[data-weigh=house-feed] [data-grams]");
      assertThat(grams).hasText("678 g");
      assertThat(page.locator("[data-meter]")).containsText("1.53 mS/cm at 14 °C");
      assertThat(page.locator(".mix-strip")).containsText("678 g · meter 1.53 mS/cm");
      assertThat(page.locator("[data-nutrient=K]")).containsText("K2O");
      assertThat(page.locator("[data-list=cautions]")).containsText("a wrong bag reads right");
      field(page, "make.volume").fill("300");
      assertThat(grams).hasText("339 g");
      expectForEverybody(window);
      window.expectNoComplaints();
    }
  }

  @Test
  void saysBesideTheFieldWhatIsWrongWithIt() {
    try (BrowserPage window = phone(ColorScheme.DARK)) {
      Page page = window.page();
      typeOneBag(page);
      assertThat(page.locator("[data-grams]")).hasText("678 g");
      field(page, "water.measured").fill("0,46");
      assertThat(fault(page, "water.measured")).hasText("has a decimal comma; write 0.46");
      assertThat(field(page, "water.measured")).hasAttribute("aria-invalid", "true");
      assertThat(page.locator("[data-grams]")).hasCount(0);
      field(page, "water.measured").fill("0.46");
      field(page, "goal.strength").fill("1413");
      assertThat(fault(page, "goal.strength")).containsText("µS/cm");
      field(page, "goal.strength").fill("150 ppm");
      assertThat(fault(page, "goal.strength")).containsText("nutrient or salts, at which factor?");
      field(page, "use[1].product").selectOption("~formula");
      field(page, "~use[1].product.formula").fill("MgSO4·5H2O");
      assertThat(fault(page, "use[1].product")).containsText("no hydrate of MgSO4 we know");
      assertThat(page.locator("[data-put-right] li")).hasCount(2);
      expectForEverybody(window);
      page.locator("[data-put-right] button:has-text('Strength')").click();
      assertThat(field(page, "goal.strength")).isFocused();
      window.expectNoComplaints();
    }
  }

  @Test
  void keepsWhatWasTypedAndTheGrowersOwnProduct() {
    try (BrowserPage window = phone(ColorScheme.LIGHT)) {
      Page page = window.page();
      typeOneBag(page);
      page.locator("button:has-text('A product of your own')").click();
      field(page, "product[1].title").fill("Bench Feed");
      field(page, "product[1].label.N").fill("13.7");
      field(page, "product[1].label.nitrate-N").fill("8.9");
      assertThat(fault(page, "product[1].label.N")).containsText("is more than its forms");
      field(page, "product[1].label.ammonium-N").fill("4.8");
      field(page, "product[1].label.P2O5").fill("5.3");
      field(page, "product[1].label.K2O").fill("21.1");
      field(page, "use[1].product").selectOption("own-1");
      assertThat(page.locator("[data-weigh=own-1]")).containsText("Bench Feed");
      String grams = page.locator("[data-grams]").innerText();
      page.reload();
      assertThat(page.locator("[data-weigh=own-1]")).containsText("Bench Feed");
      assertThat(page.locator("[data-grams]")).hasText(grams);
      window.expectNoComplaints();
    }
  }

  @Test
  void printsTheSheetOfTwoStocksWithAcidOnOnePage() {
    try (BrowserPage window = phone(ColorScheme.LIGHT)) {
      Page page = window.page();
      typeTwoStocksWithAcid(page);
      assertThat(page.locator("[data-weigh=calcium-nitrate]")).containsText("calcium stock");
      assertThat(page.locator("[data-acid]")).containsText("nitric acid");
      assertThat(page.locator("[data-stocks]")).containsText("4000 pots");
      assertThat(page.locator("[data-nutrient=K]")).containsText("as wanted, 150");
      expectForEverybody(window);
      page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
      assertThat(page.locator("form.mix")).isHidden();
      assertThat(page.locator("nav")).isHidden();
      assertThat(page.locator("[data-steps]")).isVisible();
      assertThat(page.locator("[data-steps] li").last()).containsText("mS/cm at 25 °C");
      assertThat(page.locator("[data-list=cautions]")).isVisible();
      for (String paper : new String[] {"A4", "Letter"}) {
        assertEquals(1, papers(page, paper), paper);
      }
      window.expectNoComplaints();
    }
  }

  private static void typeTwoStocksWithAcid(Page page) {
    for (int more = 0; more < 2; more++) {
      page.locator("button:has-text('Another product')").click();
    }
    field(page, "use[1].product").selectOption("calcium-nitrate");
    field(page, "use[2].product").selectOption("potassium-nitrate");
    field(page, "use[3].product").selectOption("monopotassium-phosphate");
    tap(page, "~water", "report");
    field(page, "water.hardness").fill("12 °dH");
    field(page, "water.alkalinity").fill("195 mg/L CaCO3");
    field(page, "water.sulfate").fill("19 mg/L");
    field(page, "water.sodium").fill("12 mg/L");
    tap(page, "~goal", "nutrients");
    String[][] wishes = {{"N", "130"}, {"P2O5", "60"}, {"K", "150"}};
    for (int i = 0; i < wishes.length; i++) {
      field(page, "~nutrient[" + (i + 1) + "].symbol").selectOption(wishes[i][0]);
      field(page, "~nutrient[" + (i + 1) + "].amount").fill(wishes[i][1]);
    }
    tap(page, "~make", "given");
    field(page, "make.per_pot").fill("0.4");
    tap(page, "~stock", "yes");
    field(page, "stock.volume").fill("20");
    field(page, "stock.coldest_night").fill("4");
    field(page, "stock.stocks").selectOption("2");
    field(page, "stock.makes").fill("80");
    tap(page, "~acid", "yes");
    field(page, "acid.strength").fill("60");
    field(page, "acid.density").fill("1.37");
  }

  private static long papers(Page page, String paper) {
    byte[] printed = page.pdf(new Page.PdfOptions().setFormat(paper));
    Matcher matcher = PAPER_PAGE.matcher(new String(printed, StandardCharsets.ISO_8859_1));
    long count = matcher.results().count();
    assertTrue(count > 0, "nothing printed on " + paper);
    return count;
  }

  @Test
  void writesASupplementIntoTheJournal() {
    try (BrowserPage window = openAt(1280, 900, ColorScheme.LIGHT)) {
      Page page = window.page();
      tap(page, "~what", "salt");
      field(page, "water.measured").fill("0.46");
      field(page, "supplement.product").selectOption("magnesium-sulfate");
      field(page, "supplement.nutrient").selectOption("Mg");
      field(page, "supplement.adds").fill("20");
      field(page, "supplement.volume").fill("50");
      field(page, "supplement.pots").fill("30");
      field(page, "supplement.untreated").fill("10");
      assertThat(page.locator("[data-supplement] [data-grams]")).hasText("10.1 g");
      assertThat(page.locator("[data-adds=Mg]")).containsText("usual ceiling 80");
      page.locator("[data-supplement] [data-who]").fill("Grower");
      page.locator("button:has-text('Keep it in the journal')").click();
      assertThat(page.locator("[data-supplement]")).containsText("In the journal.");
      expectForEverybody(window);
      page.navigate(service.page() + "#journal");
      assertThat(page.locator(".journal")).containsText("30 pots treated, 10 untreated");
      window.expectNoComplaints();
    }
  }

  @Test
  void fallsBackToTheLabelAndChecksAnInjectorWithoutAMeter() {
    try (BrowserPage window = phone(ColorScheme.DARK)) {
      Page page = window.page();
      tap(page, "~what", "fallback");
      field(page, "fallback.product").selectOption("house-feed");
      field(page, "fallback.volume").fill("10");
      assertThat(page.locator("[data-fallback]")).containsText("the low end of the label's rate");
      expectForEverybody(window);
      tap(page, "~what", "injector");
      field(page, "check.draw_down.drawn").fill("1.25");
      field(page, "check.draw_down.delivered").fill("98");
      field(page, "check.draw_down.should_make").fill("80");
      assertThat(page.locator("#page-mix [data-checks]"))
          .containsText("one litre of stock makes 78.4 L");
      expectForEverybody(window);
      window.expectNoComplaints();
    }
  }
}
