package feedwitness.publish.message;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import feedwitness.site.MailRoute.Security;
import jakarta.mail.internet.MimeMessage;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Against a whole mail server in this process, over TLS, with a user and a password. */
@Timeout(60)
class MailServerTest {
  @TempDir Path folder;
  private final ScheduledExecutorService deadlines = Executors.newScheduledThreadPool(1);
  private GreenMail server = new GreenMail(new ServerSetup[0]);

  @BeforeEach
  void startServer() {
    System.setProperty("greenmail.tls.keystore.file", Certificates.GOOD.store().toString());
    System.setProperty("greenmail.tls.keystore.password", Certificates.PASSWORD);
    server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTPS));
    server.setUser("grower@quarry-end.example", "grower", Bench.PASSWORD);
    server.getManagers().getUserManager().setAuthRequired(true);
    server.start();
  }

  @AfterEach
  void stopServer() {
    server.stop();
    deadlines.shutdown();
  }

  private MailChannel channel(String password) throws Exception {
    return new MailChannel(
        Bench.mail(
            server.getSmtps().getPort(),
            Security.TLS,
            Optional.of(Bench.secret(folder, password)),
            Optional.of(Certificates.GOOD.pem())),
        Limits.USUAL,
        deadlines);
  }

  @Test
  void aMessageArrivesAsItWasWritten() throws Exception {
    Letter letter = Bench.letter(Letter.Kind.ALARMS);
    assertInstanceOf(Delivery.Delivered.class, channel(Bench.PASSWORD).deliver(letter));
    MimeMessage mail = server.getReceivedMessages()[0];
    assertEquals(letter.subject(), mail.getSubject());
    assertEquals(letter.body().strip(), mail.getContent().toString().replace("\r\n", "\n").strip());
    assertEquals("<" + letter.id() + "@quarry-end.example>", mail.getMessageID());
    assertEquals("auto-generated", mail.getHeader("Auto-Submitted", null));
    assertEquals(Bench.MONDAY, mail.getSentDate().toInstant());
    Bench.noThreadIsLeft();
  }

  @Test
  void aRepeatBearsTheSameNameSoThatReceiversKnowIt() throws Exception {
    MailChannel channel = channel(Bench.PASSWORD);
    channel.deliver(Bench.letter(Letter.Kind.ALARMS));
    channel.deliver(Bench.letter(Letter.Kind.ALARMS));
    MimeMessage[] mails = server.getReceivedMessages();
    assertEquals(2, mails.length);
    assertEquals(mails[0].getMessageID(), mails[1].getMessageID());
  }

  @Test
  void anUnansweredAlarmGoesToOthersBesides() throws Exception {
    channel(Bench.PASSWORD).deliver(Bench.letter(Letter.Kind.ESCALATION));
    List<String> to =
        java.util.Arrays.stream(server.getReceivedMessages()[0].getAllRecipients())
            .map(Object::toString)
            .toList();
    assertEquals(List.of("grower@quarry-end.example", "helper@quarry-end.example"), to);
  }

  @Test
  void aWrongPasswordIsSomebodysToMendAndIsNotTold() throws Exception {
    Delivery delivery = channel("witch-hazel").deliver(Bench.letter(Letter.Kind.ALARMS));
    assertInstanceOf(Delivery.Misconfigured.class, delivery);
    assertTrue(delivery.said().contains("password"), delivery.said());
    assertTrue(!delivery.said().contains("witch-hazel"), delivery.said());
    assertEquals(0, server.getReceivedMessages().length);
  }
}
