package feedwitness.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** A real browser on the page, with everything it complains about. */
final class BrowserPage implements AutoCloseable {
  private static final List<String> ARGUMENTS =
      List.of(
          "--no-sandbox",
          "--disable-gpu",
          "--disable-quic",
          "--no-first-run",
          "--disable-background-networking",
          "--disable-component-update",
          "--disable-sync");

  /** The browser is the distribution's; nothing is to be downloaded. */
  private final Playwright playwright =
      Playwright.create(
          new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));

  private final Browser browser;
  private final Page page;
  private final List<String> complaints = new ArrayList<>();

  /** Opens a window of the given size at the address. */
  BrowserPage(URI address, int width, int height, ColorScheme scheme) {
    this(address, width, height, scheme, false);
  }

  /** For a certificate that signed itself, as one made for a test has. */
  static BrowserPage trustingAnyCertificate(
      URI address, int width, int height, ColorScheme scheme) {
    return new BrowserPage(address, width, height, scheme, true);
  }

  private BrowserPage(
      URI address, int width, int height, ColorScheme scheme, boolean anyCertificate) {
    browser =
        playwright
            .chromium()
            .launch(
                new BrowserType.LaunchOptions().setExecutablePath(chromium()).setArgs(ARGUMENTS));
    page =
        browser.newPage(
            new Browser.NewPageOptions()
                .setViewportSize(width, height)
                .setColorScheme(scheme)
                .setIgnoreHTTPSErrors(anyCertificate));
    page.onPageError(complaints::add);
    page.onConsoleMessage(
        message -> {
          // The browser notes every answer that is no success; the page shows those itself.
          if (message.type().equals("error") && !message.text().startsWith("Failed to load")) {
            complaints.add(message.text());
          }
        });
    page.navigate(address.toString());
  }

  private static Path chromium() {
    return Stream.of("/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome")
        .map(Path::of)
        .filter(Files::isExecutable)
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalStateException(
                    "no Chromium in /usr/bin; install it (Debian: apt-get install chromium)"));
  }

  Page page() {
    return page;
  }

  /** Fails on script errors and violations of the content security policy. */
  void expectNoComplaints() {
    assertEquals(List.of(), complaints);
  }

  /** Fails if the page is wider than the window. */
  void expectNoSidewaysScrolling() {
    Object overflow =
        page.evaluate(
            "document.documentElement.scrollWidth - document.documentElement.clientWidth");
    assertTrue(((Number) overflow).intValue() <= 0, "the page is too wide by " + overflow + " px");
  }

  @Override
  public void close() {
    browser.close();
    playwright.close();
  }
}
