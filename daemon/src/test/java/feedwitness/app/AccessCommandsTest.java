package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.publish.access.CertificateFiles;
import feedwitness.publish.access.TestCertificates;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** From a new key to a paired phone, by commands on a real service with a real store. */
@Timeout(120)
class AccessCommandsTest {
  private static final Pattern CODE = Pattern.compile("Code {3}(\\d{4}) (\\d{4})");

  @TempDir Path folder;

  private String config() {
    return folder.resolve("feedwitness.toml").toString();
  }

  /** Nobody counts as sitting at the desk, as if all came from other machines. */
  private String web(String more) {
    Cli made = Cli.run("access-key", folder.resolve("access.key").toString());
    assertEquals(0, made.code(), made.err());
    assertTrue(made.out().contains("access-key-file = "), made.out());
    return """
        [web]
        access-key-file = "access.key"
        names = ["localhost"]
        behind-proxy = true
        %s
        [[point]]
        name = "drain"
        place = "drain"
        """
        .formatted(more);
  }

  private HttpResponse<String> pair(URI page, String code) throws Exception {
    return HttpClient.newHttpClient()
        .send(
            HttpRequest.newBuilder(page.resolve("/api/v1/access/pair"))
                .header("Content-Type", "application/json")
                .POST(
                    HttpRequest.BodyPublishers.ofString(
                        "{\"code\":\"%s\",\"name\":\"Barrel phone\"}".formatted(code)))
                .build(),
            HttpResponse.BodyHandlers.ofString());
  }

  private String code(String... more) {
    String[] words = new String[more.length + 3];
    words[0] = "pair";
    words[1] = "--config";
    words[2] = config();
    System.arraycopy(more, 0, words, 3, more.length);
    Cli shown = Cli.run(words);
    assertEquals(0, shown.code(), shown.err());
    assertTrue(shown.out().contains("█"), "no picture for the camera");
    assertTrue(shown.out().contains("Page   https://localhost/"), shown.out());
    Matcher code = CODE.matcher(shown.out());
    assertTrue(code.find(), shown.out());
    return code.group(1) + code.group(2);
  }

  @Test
  void letsAPhoneInShowsItAndShutsItOut() throws Exception {
    try (ServiceUnderTest service = ServiceUnderTest.start(folder, web(""))) {
      assertTrue(run("devices").out().contains("No device is paired"));
      HttpResponse<String> paired = pair(service.page(), code());
      assertEquals(201, paired.statusCode(), paired::body);
      String list = run("devices").out();
      assertTrue(list.contains("Barrel phone") && list.contains("see-and-act"), list);
      assertTrue(list.contains("by command line"), list);
      assertTrue(run("devices", "--shut-out", "barrel phone").out().contains("is shut out"));
      assertTrue(run("devices").out().contains("No device is paired"));
      Cli unknown = Cli.run("devices", "--config", config(), "--shut-out", "nobody");
      assertEquals(1, unknown.code());
      assertTrue(unknown.err().contains("no device 'nobody' is paired"), unknown.err());
    }
  }

  private Cli run(String command, String... more) {
    String[] words = new String[more.length + 3];
    words[0] = command;
    words[1] = "--config";
    words[2] = config();
    System.arraycopy(more, 0, words, 3, more.length);
    Cli done = Cli.run(words);
    assertEquals(0, done.code(), done.err());
    return done;
  }

  @Test
  void keepsAPhonePairedAcrossARestartAndItsTokenOutOfEveryFile() throws Exception {
    String web = web("");
    String cookie;
    try (ServiceUnderTest service = ServiceUnderTest.start(folder, web)) {
      HttpResponse<String> paired = pair(service.page(), code("--see-only"));
      cookie = paired.headers().firstValue("Set-Cookie").orElseThrow().split(";", 2)[0];
    }
    try (ServiceUnderTest service = ServiceUnderTest.start(folder, web)) {
      HttpResponse<String> points =
          HttpClient.newHttpClient()
              .send(
                  HttpRequest.newBuilder(service.page().resolve("/api/v1/points"))
                      .header("Cookie", cookie)
                      .build(),
                  HttpResponse.BodyHandlers.ofString());
      assertEquals(200, points.statusCode(), points::body);
      Path backup = folder.resolve("backup.zip");
      assertEquals(0, Cli.run("backup", "--config", config(), backup.toString()).code());
      String token = cookie.substring(cookie.indexOf('=') + 1);
      String all = new String(Files.readAllBytes(backup), StandardCharsets.ISO_8859_1);
      assertFalse(all.contains(token));
    }
  }

  @Test
  void commandsKnowTheServiceByItsCertificate() throws Exception {
    CertificateFiles files = TestCertificates.make(folder, "page", "-1d", 90);
    String web =
        web(
            "certificate-file = \"%s\"\nprivate-key-file = \"%s\""
                .formatted(files.chain(), files.key()));
    try (ServiceUnderTest service = ServiceUnderTest.start(folder, web)) {
      assertEquals("https", service.page().getScheme());
      code();
      assertEquals(0, Cli.run("backup", "--config", config(), folder + "/all.zip").code());
      CertificateFiles other = TestCertificates.make(folder, "other", "-1d", 90);
      Files.copy(other.chain(), files.chain(), StandardCopyOption.REPLACE_EXISTING);
      Cli fooled = Cli.run("devices", "--config", config());
      assertEquals(1, fooled.code());
      assertTrue(fooled.err().contains("nothing answers"), fooled.err());
    }
  }

  @Test
  void refusesToStartOnAKeyThatIsOpenToOthers() throws Exception {
    Path file = Files.writeString(folder.resolve("feedwitness.toml"), nursery() + web(""));
    Files.setPosixFilePermissions(
        folder.resolve("access.key"), PosixFilePermissions.fromString("rw-r--r--"));
    Cli refused = Cli.run("run", "--config", file.toString(), "--for", "1s");
    assertEquals(1, refused.code());
    assertTrue(refused.err().contains("access.key has the rights rw-r--r--"), refused.err());
  }

  @Test
  void refusesAnExpiredCertificateWithItsDateAndGoesOnReading() throws Exception {
    CertificateFiles files = TestCertificates.make(folder, "page", "-100d", 90);
    Path file =
        Files.writeString(
            folder.resolve("feedwitness.toml"),
            nursery()
                + "[server]\nlisten = \"127.0.0.1:0\"\n"
                + web(
                    "certificate-file = \"%s\"\nprivate-key-file = \"%s\""
                        .formatted(files.chain(), files.key())));
    Cli run = Cli.run("run", "--config", file.toString(), "--for", "1s");
    assertEquals(0, run.code(), run.err());
    assertTrue(run.err().contains(files.chain() + " ended at 20"), run.err());
    assertTrue(run.err().contains("only this machine can open the page"), run.err());
    assertTrue(run.out().contains("The page is at    http://127.0.0.1:"), run.out());
  }

  private static String nursery() {
    return "[nursery]\nname = \"Quarry End Nursery\"\nzone = \"Europe/London\"\n";
  }
}
