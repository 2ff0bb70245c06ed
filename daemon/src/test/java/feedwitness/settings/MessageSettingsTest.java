package feedwitness.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.site.MailRoute;
import feedwitness.site.MessagePlan;
import feedwitness.site.QuietHours;
import feedwitness.site.Urgency;
import feedwitness.site.WebhookRoute;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How people are reached, as it stands in a configuration that begins on line 5. */
class MessageSettingsTest {
  private static final String MAIL =
      """
      [mail]
      server = "mail.example.org"
      from = "feed@example.org"
      to = ["grower@example.org"]
      """;
  private static final String HOOK =
      """
      [[webhook]]
      name = "desk"
      url = "https://hooks.example.org/feed"
      secret-file = "hook-secret"
      """;

  @TempDir private Path folder;

  private Desk desk() {
    return new Desk(folder);
  }

  private MessagePlan plan(String text) {
    return desk().right(Desk.NURSERY + text).config().messages();
  }

  private void fault(String text, String place, String... words) {
    desk().fault(Desk.NURSERY + text, place, words);
  }

  @Test
  void nobodyIsReachedUnlessItIsWritten() {
    assertEquals(MessagePlan.NONE, plan(""));
    assertTrue(plan("[messages]\nquiet-from = \"21:00\"\nquiet-to = \"06:00\"\n").isEmpty());
  }

  @Test
  void readsEverythingThereIs() {
    MessagePlan plan =
        plan(
            """
            [messages]
            quiet-from = "21:00"
            quiet-to = "06:00"
            quiet-lets-through = "medium"
            group = "1min"
            escalate-after = "never"
            daily = "06:30"
            give-up-after = "1d"
            [mail]
            server = "mail.example.org"
            security = "tls"
            user = "grower"
            password-file = "mail-password"
            from = "feed@example.org"
            to = ["grower@example.org", "helper@example.org"]
            escalate-to = ["owner@example.org"]
            least = "low"
            ca-file = "/etc/feedwitness/ca.pem"
            [[webhook]]
            name = "desk"
            url = "http://192.168.1.5/feed"
            secret-file = "/run/secret"
            reach = "private"
            """);
    assertEquals(
        Optional.of(new QuietHours(LocalTime.of(21, 0), LocalTime.of(6, 0), Urgency.MEDIUM)),
        plan.quiet());
    assertEquals(Duration.ofMinutes(1), plan.group());
    assertEquals(Optional.empty(), plan.escalateAfter());
    assertEquals(Optional.of(LocalTime.of(6, 30)), plan.dailyAt());
    assertEquals(Duration.ofDays(1), plan.giveUpAfter());
    assertEquals(
        new MailRoute(
            "mail.example.org",
            465,
            MailRoute.Security.TLS,
            Optional.of(
                new MailRoute.Login(
                    "grower", folder.toAbsolutePath().resolve("mail-password").toString())),
            "feed@example.org",
            List.of("grower@example.org", "helper@example.org"),
            List.of("owner@example.org"),
            Urgency.LOW,
            Optional.of("/etc/feedwitness/ca.pem")),
        plan.mail().orElseThrow());
    assertEquals(
        List.of(
            new WebhookRoute(
                "desk",
                "http://192.168.1.5/feed",
                "/run/secret",
                WebhookRoute.Reach.PRIVATE,
                Urgency.NOTE,
                Optional.empty())),
        plan.webhooks());
  }

  @Test
  void namesWhatIsWrongWithTimes() {
    fault("[messages]\nquiet-from = \"21:00\"\n", "5:1", "'quiet-to' is missing");
    fault(
        "[messages]\nquiet-from = \"9pm\"\nquiet-to = \"06:00\"\n",
        "6:1",
        "'9pm' is no time of day");
    fault(
        "[messages]\nquiet-from = \"06:00\"\nquiet-to = \"06:00\"\n", "7:1", "two different times");
    fault("[messages]\nquiet-lets-through = \"low\"\n", "6:1", "there are no quiet hours");
    fault("[messages]\ndaily = \"24:00\"\n", "6:1", "'24:00' is no time of day", "never");
    fault("[messages]\ngroup = \"1h\"\n", "6:1", "group 1h is outside 1s to 15min");
    fault("[messages]\nescalate-after = \"30\"\n", "6:1", "'30' is no duration", "never");
    fault("[messages]\nescalate-after = \"30s\"\n", "6:1", "30s is outside 1min to 7d");
    fault("[messages]\nquiet = \"21:00\"\n", "6:1", "'quiet' is unknown");
  }

  @Test
  void namesWhatIsWrongWithMail() {
    fault("[mail]\nserver = \"m.example.org\"\nfrom = \"a@b.org\"\n", "5:1", "'to' is missing");
    fault(MAIL + "user = \"grower\"\n", "5:1", "'password-file' is missing", "never stands here");
    fault(MAIL + "password = \"x\"\n", "9:1", "'password' is unknown", "password-file");
    fault(
        MAIL + "security = \"none\"\nuser = \"g\"\npassword-file = \"p\"\n",
        "9:1",
        "would send the password for all to read");
    fault(MAIL + "port = 99999\n", "9:1", "port 99999 is outside 1 to 65535");
    fault(MAIL + "escalate-to = [\"Grower <g@example.org>\"]\n", "9:1", "no plain mail address");
    fault(MAIL + "escalate-to = []\n", "9:1", "write a list of 1 to 20 texts");
    fault(MAIL + "escalate-to = [7]\n", "9:1", "1 entries, 0 of them text");
  }

  @Test
  void namesWhatIsWrongWithAWebhookWithoutRepeatingItsAddress() {
    fault(HOOK.replace("https", "http"), "7:1", "all on the way could read it");
    fault(HOOK.replace("https", "ftp"), "7:1", "does not begin with https://");
    fault(HOOK.replace("hooks.", "u:p@hooks."), "7:1", "leave them out");
    fault(HOOK.replace("desk", "mail"), "6:1", "name 'mail' is taken by another channel");
    fault(HOOK + HOOK, "10:1", "name 'desk' is taken");
    fault(HOOK + "reach = \"anywhere\"\n", "9:1", "public, private, loopback, link-local");
    desk().write("feedwitness.toml", Desk.NURSERY + HOOK.replace("https://", "key 4711"));
    assertTrue(!Desk.wrong(desk().read()).get(0).text().contains("4711"));
  }

  private List<String> notes(String text) {
    return desk().right(Desk.NURSERY + text).notes();
  }

  @Test
  void aSecretOpenToOthersIsToldAndNoReasonNotToMeasure() throws Exception {
    List<String> missing = notes(HOOK);
    assertEquals(1, missing.size());
    assertTrue(missing.get(0).contains("feedwitness.toml:8:1: secret-file"), missing::toString);
    assertTrue(missing.get(0).contains("is not there yet"), missing::toString);
    Path secret = desk().file("hook-secret");
    Files.writeString(secret, "willow and alder and birch");
    Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-r--r--"));
    List<String> open = notes(HOOK);
    assertTrue(open.get(0).contains("is open to others; close it: chmod 600"), open::toString);
    assertTrue(!open.get(0).contains("willow"), open::toString);
    Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-r-----"));
    assertEquals(List.of(), notes(HOOK));
  }
}
