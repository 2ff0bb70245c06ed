package feedwitness.publish.message;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.publish.message.Counter.Behaviour;
import feedwitness.publish.message.Counter.Guest;
import feedwitness.site.MailRoute.Security;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Each way in which a mail server fails, and what is made of it. */
@Timeout(60)
class MailTroubleTest {
  @TempDir Path folder;
  private Limits limits = Limits.USUAL;
  private final ScheduledExecutorService deadlines = Executors.newScheduledThreadPool(1);

  @AfterEach
  void nothingIsLeftBehind() throws Exception {
    Bench.noThreadIsLeft();
    deadlines.shutdown();
  }

  private Delivery deliver(int port, Security security, Optional<Path> password, String ca) {
    MailChannel channel =
        new MailChannel(Bench.mail(port, security, password, Optional.of(ca)), limits, deadlines);
    return channel.deliver(Bench.letter(Letter.Kind.ALARMS));
  }

  private Delivery plain(Behaviour behaviour) throws Exception {
    try (Counter server = new Counter(behaviour)) {
      return deliver(server.port(), Security.NONE, Optional.empty(), Certificates.GOOD.pem());
    }
  }

  private static void later(Delivery delivery, String... words) {
    said(assertInstanceOf(Delivery.Later.class, delivery), words);
  }

  private static void mend(Delivery delivery, String... words) {
    said(assertInstanceOf(Delivery.Misconfigured.class, delivery), words);
  }

  private static void said(Delivery delivery, String... words) {
    for (String word : words) {
      assertTrue(delivery.said().contains(word), delivery.said());
    }
    assertTrue(delivery.said().length() < 400, delivery.said());
  }

  private static void upToData(Guest guest) throws Exception {
    guest.say("220 mail.quarry-end.example");
    guest.hear();
    guest.say("250 mail.quarry-end.example");
    guest.hear();
    guest.say("250 sender");
    guest.hear();
    guest.say("250 recipient");
    guest.hear();
  }

  @Test
  void nobodyListens() throws Exception {
    later(
        deliver(Counter.closedPort(), Security.NONE, Optional.empty(), Certificates.GOOD.pem()),
        "localhost",
        "nothing takes connections");
  }

  @Test
  void theGreetingNeverComes() throws Exception {
    limits = Bench.SHORT;
    later(plain(Guest::hang), "localhost");
  }

  @Test
  void itFallsSilentInTheMiddleOfTheMail() throws Exception {
    limits = Bench.SHORT;
    later(
        plain(
            guest -> {
              upToData(guest);
              guest.say("354 go on");
              guest.hang();
            }));
  }

  @Test
  void itTricklesAnEndlessGreeting() throws Exception {
    limits = Bench.SHORT;
    later(plain(guest -> guest.trickle("220 ")), "within");
  }

  @Test
  void itSendsMoreThanAnybodyNeeds() throws Exception {
    later(plain(guest -> guest.flood("220 ")), "more than 262144 octets");
  }

  @Test
  void itDoesNotSpeakMail() throws Exception {
    later(plain(guest -> guest.raw("HTTP/1.1 400 Bad Request\r\n\r\n")));
  }

  @Test
  void itAsksToComeBackLater() throws Exception {
    later(plain(guest -> guest.say("421 too busy")), "421");
    later(
        plain(
            guest -> {
              guest.say("220 mail");
              guest.hear();
              guest.say("250 mail");
              guest.hear();
              guest.say("250 sender");
              guest.hear();
              guest.say("450 greylisted, come back in 5 minutes");
              guest.hear();
            }),
        "asks to wait",
        "greylisted");
  }

  @Test
  void itWillNeverTakeTheMessage() throws Exception {
    Delivery delivery =
        plain(
            guest -> {
              upToData(guest);
              guest.say("354 go on");
              guest.hearMail();
              guest.say("554 this looks like an advertisement");
              guest.hear();
            });
    said(
        assertInstanceOf(Delivery.Refused.class, delivery),
        "refuses",
        "looks like an advertisement");
  }

  @Test
  void itKnowsNoSuchRecipient() throws Exception {
    Delivery delivery =
        plain(
            guest -> {
              guest.say("220 mail");
              guest.hear();
              guest.say("250 mail");
              guest.hear();
              guest.say("250 sender");
              guest.hear();
              guest.say("550 no such user");
              guest.hear();
            });
    said(assertInstanceOf(Delivery.Refused.class, delivery), "no such user");
  }

  @Test
  void itHangsUpAfterTheMailWithoutAWord() throws Exception {
    later(
        plain(
            guest -> {
              upToData(guest);
              guest.say("354 go on");
              guest.hearMail();
            }));
  }

  @Test
  void aMailThatWasTakenIsDeliveredEvenIfTheFarewellFails() throws Exception {
    Delivery delivery =
        plain(
            guest -> {
              upToData(guest);
              guest.say("354 go on");
              guest.hearMail();
              guest.say("250 queued as 17");
              guest.hang();
            });
    said(assertInstanceOf(Delivery.Delivered.class, delivery), "250 queued as 17");
  }

  private Delivery overTls(Certificates shown, Certificates trusted) throws Exception {
    try (Counter server = new Counter(guest -> guest.secure(shown.context()))) {
      return deliver(server.port(), Security.TLS, Optional.empty(), trusted.pem());
    }
  }

  @Test
  void itsCertificateIsFromNobodyWeTrust() throws Exception {
    mend(overTls(Certificates.GOOD, Certificates.OF_ANOTHER_NAME), "certificate", "ca-file");
  }

  @Test
  void itsCertificateHasExpired() throws Exception {
    mend(overTls(Certificates.EXPIRED, Certificates.EXPIRED), "has expired");
  }

  @Test
  void itsCertificateIsForAnotherName() throws Exception {
    mend(overTls(Certificates.OF_ANOTHER_NAME, Certificates.OF_ANOTHER_NAME), "not for this name");
  }

  @Test
  void itSpeaksInTheClearWhereTlsIsExpected() throws Exception {
    try (Counter server = new Counter(guest -> guest.say("220 mail", "220 mail"))) {
      mend(
          deliver(server.port(), Security.TLS, Optional.empty(), Certificates.GOOD.pem()),
          "no TLS was agreed on");
    }
  }

  private static void startTls(Guest guest, Certificates shown) throws Exception {
    guest.say("220 mail");
    guest.hear();
    guest.say("250-mail", "250 STARTTLS");
    guest.hear();
    guest.say("220 go ahead");
    guest.secure(shown.context());
    guest.hear();
    guest.say("250-mail", "250 AUTH PLAIN");
  }

  @Test
  void thePasswordIsSaidOnlyAfterTheChangeToTls() throws Exception {
    Optional<Path> password = Optional.of(Bench.secret(folder, Bench.PASSWORD));
    try (Counter server =
        new Counter(
            guest -> {
              startTls(guest, Certificates.GOOD);
              guest.hear();
              guest.say("235 welcome");
              guest.hear();
              guest.say("250 sender");
              guest.hear();
              guest.say("250 recipient");
              guest.hear();
              guest.say("354 go on");
              guest.hearMail();
              guest.say("250 taken");
            })) {
      Delivery delivery =
          deliver(server.port(), Security.STARTTLS, password, Certificates.GOOD.pem());
      assertInstanceOf(Delivery.Delivered.class, delivery, () -> delivery + "" + server.heard());
      List<String> heard = server.heard();
      assertEquals("STARTTLS", heard.get(1));
      assertTrue(heard.get(3).startsWith("AUTH PLAIN "), heard::toString);
    }
  }

  @Test
  void nothingIsSaidToAServerThatDoesNotChangeToTls() throws Exception {
    Optional<Path> password = Optional.of(Bench.secret(folder, Bench.PASSWORD));
    try (Counter server =
        new Counter(
            guest -> {
              guest.say("220 mail");
              guest.hear();
              guest.say("250-mail", "250 AUTH PLAIN LOGIN");
              guest.hear();
            })) {
      later(
          deliver(server.port(), Security.STARTTLS, password, Certificates.GOOD.pem()), "STARTTLS");
      assertFalse(server.heard().toString().contains("AUTH"), server.heard()::toString);
    }
  }

  @Test
  void starttlsAsksForTheCertificateToo() throws Exception {
    try (Counter server = new Counter(guest -> startTls(guest, Certificates.EXPIRED))) {
      mend(
          deliver(server.port(), Security.STARTTLS, Optional.empty(), Certificates.EXPIRED.pem()),
          "has expired");
    }
  }

  @Test
  void aPasswordFileOpenToOthersIsNotUsed() throws Exception {
    Path file = Bench.secret(folder, Bench.PASSWORD);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));
    mend(
        deliver(Counter.closedPort(), Security.TLS, Optional.of(file), Certificates.GOOD.pem()),
        "open to others",
        "chmod 600");
    Files.delete(file);
    mend(
        deliver(Counter.closedPort(), Security.TLS, Optional.of(file), Certificates.GOOD.pem()),
        "is not there");
  }
}
