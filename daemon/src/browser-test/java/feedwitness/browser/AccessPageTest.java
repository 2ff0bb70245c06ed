package feedwitness.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Cookie;
import com.microsoft.playwright.options.SameSiteAttribute;
import feedwitness.app.ServiceUnderTest;
import feedwitness.publish.RemoteService;
import feedwitness.publish.access.AccessKey;
import feedwitness.publish.access.CertificateFiles;
import feedwitness.publish.access.Passport;
import feedwitness.publish.access.Role;
import feedwitness.publish.access.TestCertificates;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A phone is let in over TLS, lets a helper's phone in, and shuts it out again. */
@Timeout(180)
class AccessPageTest {
  private static final double PATIENCE_MILLIS = 30_000;

  @TempDir Path folder;
  private ServiceUnderTest service;
  private RemoteService commands;

  @BeforeEach
  void open() throws Exception {
    Path key = folder.resolve("access.key");
    AccessKey.make(key);
    CertificateFiles files = TestCertificates.make(folder, "page", "-1d", 90);
    // Behind a proxy nobody counts as sitting at the desk, so loopback is as far away as a barrel.
    service =
        ServiceUnderTest.start(
            folder,
            """
            [web]
            access-key-file = "access.key"
            names = ["localhost"]
            behind-proxy = true
            certificate-file = "page.pem"
            private-key-file = "page-key.pem"
            [[point]]
            name = "drain"
            title = "Run-off"
            place = "drain"
            """);
    Optional<AccessKey> known =
        AccessKey.read(key) instanceof AccessKey.Reading.Good good
            ? Optional.of(good.key())
            : Optional.empty();
    commands = new RemoteService(service.page(), new Passport(known, Optional.of(files.chain())));
  }

  @AfterEach
  void close() {
    service.close();
  }

  private BrowserPage phone(ColorScheme scheme) {
    return BrowserPage.trustingAnyCertificate(service.page(), 390, 844, scheme);
  }

  private static void pair(Page page, String code, String name) {
    Locator form = page.locator("form[data-pair]");
    form.locator("input[name=code]").fill(code);
    form.locator("input[name=name]").fill(name);
    form.locator("button").click();
  }

  @Test
  void letsAPhoneInByTheCodeAndKeepsItsTokenFromScripts() throws Exception {
    String code = commands.offerCode(Role.SEE_AND_ACT).code();
    try (BrowserPage window = phone(ColorScheme.LIGHT)) {
      Page page = window.page();
      assertThat(page.locator("form[data-pair]")).isVisible();
      pair(page, code.equals("00000000") ? "0000 0001" : "0000 0000", "Barrel phone");
      assertThat(page.locator("[data-error=code]")).containsText("wrong, used or older");
      pair(page, code, "Barrel phone");
      assertThat(page.locator("article[data-point=drain]")).isVisible();
      Cookie cookie = page.context().cookies().get(0);
      assertEquals("__Host-feedwitness-device", cookie.name);
      assertTrue(cookie.httpOnly && cookie.secure);
      assertEquals(SameSiteAttribute.STRICT, cookie.sameSite);
      assertEquals("", page.evaluate("document.cookie"));
      Locator drain = page.locator("article[data-point=drain]");
      drain.locator("button:has-text('Type a reading')").click();
      drain.locator("input[name=conductivity]").fill("1.85");
      drain.locator(".buttons button").click();
      becomes(drain, "reading");
      window.expectNoComplaints();
    }
    assertEquals("Barrel phone", commands.devices().get(0).name());
  }

  @Test
  void letsAHelpersPhoneInByThePictureAndShutsItOutAgain() throws Exception {
    String code = commands.offerCode(Role.SEE_AND_ACT).code();
    try (BrowserPage own = phone(ColorScheme.DARK);
        BrowserPage helpers = phone(ColorScheme.LIGHT)) {
      pair(own.page(), code, "Barrel phone");
      assertThat(own.page().locator("article[data-point=drain]")).isVisible();
      own.page().locator("nav a[href='#more']").click();
      own.page().locator("#page-more a[href='#devices']").click();
      assertThat(own.page().locator("[data-self]")).containsText("Barrel phone");
      own.page().locator("label:has(input[value=see])").click();
      own.page().locator("form[data-offer] .buttons button").click();
      Locator digits = own.page().locator("[data-digits]");
      assertThat(digits).isVisible();
      assertThat(own.page().locator("svg.qr path")).isVisible();
      String shown = digits.textContent().replace(" ", "");
      helpers.page().navigate(service.page() + "#pair/" + shown);
      Locator prefilled = helpers.page().locator("input[name=code]");
      assertThat(prefilled).hasValue(shown.substring(0, 4) + " " + shown.substring(4));
      helpers.page().locator("input[name=name]").fill("Helper’s phone");
      helpers.page().locator("form[data-pair] button").click();
      assertThat(helpers.page().locator("article[data-point=drain]")).isVisible();
      assertThat(helpers.page().locator("nav a[href='#setup']")).isHidden();
      assertThat(helpers.page().locator("article button:has-text('Type a reading')")).isHidden();
      Locator line = own.page().locator("li[data-device='Helper’s phone']");
      assertThat(line).containsText("sees only");
      assertThat(digits).isHidden();
      line.locator("button:has-text('Shut out')").click();
      line.locator("[data-yes]").click();
      assertThat(helpers.page().locator("form[data-pair]"))
          .isVisible(new LocatorAssertions.IsVisibleOptions().setTimeout(PATIENCE_MILLIS));
      own.expectNoSidewaysScrolling();
      own.expectNoComplaints();
      helpers.expectNoComplaints();
    }
  }

  @Test
  void canBeUsedByEverybody() throws Exception {
    for (ColorScheme scheme : new ColorScheme[] {ColorScheme.LIGHT, ColorScheme.DARK}) {
      String code = commands.offerCode(Role.SEE_AND_ACT).code();
      try (BrowserPage window = phone(scheme)) {
        Page page = window.page();
        expectUsable(window, "pairing " + scheme);
        pair(page, code, "Phone " + scheme);
        assertThat(page.locator("article[data-point=drain]")).isVisible();
        page.navigate(service.page() + "#devices");
        page.locator("form[data-offer] .buttons button").click();
        assertThat(page.locator("[data-digits]")).isVisible();
        expectUsable(window, "devices " + scheme);
        window.expectNoComplaints();
      }
    }
  }

  private static void expectUsable(BrowserPage window, String where) {
    assertEquals(
        "",
        new AxeBuilder(window.page()).analyze().getViolations().toString().replace("[]", ""),
        where);
    window.expectNoSidewaysScrolling();
  }

  private static void becomes(Locator element, String state) {
    assertThat(element)
        .hasAttribute(
            "data-state",
            state,
            new LocatorAssertions.HasAttributeOptions().setTimeout(PATIENCE_MILLIS));
  }
}
