package feedwitness.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.ColorScheme;
import feedwitness.app.ServiceUnderTest;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The test button, from the page to a mail server, and a receiver that is not there. */
@Timeout(180)
class MessagesPageTest {
  private static final double PATIENCE_MILLIS = 30_000;

  @TempDir Path folder;
  private final GreenMail mail =
      new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));

  @BeforeEach
  void startMail() throws Exception {
    mail.start();
    Path secret = Files.writeString(folder.resolve("hook-secret"), "alder-and-willow-and-birch\n");
    Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-------"));
  }

  @AfterEach
  void stopMail() {
    mail.stop();
  }

  private ServiceUnderTest start() throws Exception {
    return ServiceUnderTest.start(
        folder,
        """
        [mail]
        server = "127.0.0.1"
        port = %d
        security = "none"
        from = "feed@quarry-end.example"
        to = ["grower@quarry-end.example"]
        [[webhook]]
        name = "desk"
        url = "http://127.0.0.1:9/feed"
        secret-file = "hook-secret"
        reach = "loopback"
        """
            .formatted(mail.getSmtp().getPort()));
  }

  @Test
  void theTestButtonSaysWhoWasReached() throws Exception {
    try (ServiceUnderTest service = start();
        BrowserPage window = new BrowserPage(service.page(), 390, 844, ColorScheme.LIGHT)) {
      Page page = window.page();
      page.navigate(service.page() + "#messages");
      page.locator("[data-test-messages]").click();
      assertThat(page.locator("[data-channel=mail] [data-channel-verdict]"))
          .hasText(
              "● delivered", new LocatorAssertions.HasTextOptions().setTimeout(PATIENCE_MILLIS));
      assertThat(page.locator("[data-channel=desk] [data-channel-verdict]"))
          .hasText(
              "▲ not delivered",
              new LocatorAssertions.HasTextOptions().setTimeout(PATIENCE_MILLIS));
      assertTrue(mail.waitForIncomingEmail(10_000, 1));
      assertEquals("Quarry End Nursery: test message", mail.getReceivedMessages()[0].getSubject());
      assertEquals("[]", new AxeBuilder(page).analyze().getViolations().toString());
      window.expectNoSidewaysScrolling();
      window.expectNoComplaints();
    }
  }
}
