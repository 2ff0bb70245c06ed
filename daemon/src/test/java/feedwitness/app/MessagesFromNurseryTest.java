package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.internet.MimeMessage;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** From a probe above its limit to a mail; a webhook whose receiver hangs delays nothing. */
@Timeout(180)
class MessagesFromNurseryTest {
  private static final Instant TUESDAY = Instant.parse("2026-06-02T09:00:00Z");
  private static final String SECRET = "alder-and-willow-and-birch";

  @TempDir Path folder;
  private final GreenMail mail =
      new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
  private NurseryUnderTest nursery;
  private ServerSocket hanging;

  @BeforeEach
  void openNursery() throws Exception {
    nursery = NurseryUnderTest.open(folder, TUESDAY, 10);
    mail.start();
    // Takes connections into its queue and never says a word.
    hanging = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    Path secret = Files.writeString(folder.resolve("hook-secret"), SECRET + "\n");
    Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-------"));
  }

  @AfterEach
  void closeNursery() throws Exception {
    nursery.close();
    mail.stop();
    hanging.close();
  }

  private ServiceUnderTest start() throws Exception {
    String points =
        """
        [[point]]
        name = "tank"
        title = "Mixing tank"
        place = "tank"
        port = "{bus}"
        profile = "modbus-float"
        unit = 11
        conductivity-high = "0.10 mS/cm"
        [[alarm]]
        kind = "conductivity-high"
        on-delay = "10s"
        priority = "high"
        [messages]
        group = "1s"
        [mail]
        server = "127.0.0.1"
        port = %d
        security = "none"
        from = "feed@quarry-end.example"
        to = ["grower@quarry-end.example"]
        [[webhook]]
        name = "desk"
        url = "http://127.0.0.1:%d/key-4711"
        secret-file = "hook-secret"
        reach = "loopback"
        """;
    return nursery.start(points.formatted(mail.getSmtp().getPort(), hanging.getLocalPort()));
  }

  @Test
  void anAlarmReachesThePhoneAndAReceiverThatHangsDelaysNoReading() throws Exception {
    try (ServiceUnderTest service = start()) {
      assertTrue(mail.waitForIncomingEmail(60_000, 1));
      MimeMessage alarm = mail.getReceivedMessages()[0];
      assertTrue(alarm.getSubject().startsWith("Quarry End Nursery: URGENT: "), alarm::toString);
      String text = alarm.getContent().toString();
      assertTrue(text.contains("tank") && text.contains("0.10 mS/cm"), text);
      assertTrue(text.contains("What to do: "), text);
      JsonNode before = service.get("/api/v1/points/tank");
      service.await("/api/v1/points/tank", now -> !now.path("time").equals(before.path("time")));
      service.post("/api/v1/messages/test", "{}", 202);
      assertTrue(mail.waitForIncomingEmail(60_000, 2));
      JsonNode state =
          service.await(
              "/api/v1/messages", now -> now.at("/channels/0/last/delivered").asBoolean());
      assertEquals("mail", state.at("/channels/0/name").asText());
      assertEquals(1, state.get("unanswered").asInt());
      String shown = state.toString();
      assertTrue(!shown.contains(SECRET) && !shown.contains("4711"), shown);
      assertEquals("ok", service.get("/health").get("status").asText());
    }
  }
}
