package feedwitness.publish.message;

import feedwitness.site.MailRoute;
import jakarta.mail.Message.RecipientType;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import java.util.Date;
import java.util.LinkedHashSet;
import java.util.Set;

/** A letter as a mail (RFC 5322), the same octets in all that matters at every attempt. */
final class MailText {
  private MailText() {}

  static MimeMessage message(Session session, Letter letter, MailRoute route)
      throws MessagingException {
    MimeMessage message = new Named(session, "<" + letter.id() + "@" + domain(route.from()) + ">");
    message.setFrom(new InternetAddress(route.from()));
    Set<String> to = new LinkedHashSet<>(route.to());
    if (letter.kind() == Letter.Kind.ESCALATION) {
      to.addAll(route.escalateTo());
    }
    for (String each : to) {
      message.addRecipient(RecipientType.TO, new InternetAddress(each));
    }
    message.setSubject(Words.line(letter.subject(), 200), "UTF-8");
    message.setSentDate(Date.from(letter.made()));
    message.setText(letter.body(), "UTF-8");
    // Tells holiday answering machines to keep quiet, RFC 3834.
    message.setHeader("Auto-Submitted", "auto-generated");
    if (letter.urgency() == feedwitness.site.Urgency.HIGH) {
      message.setHeader("Importance", "high");
    }
    message.saveChanges();
    return message;
  }

  private static String domain(String address) {
    return address.substring(address.lastIndexOf('@') + 1);
  }

  /** The library gives each message a name of its own unless it is kept from doing so. */
  private static final class Named extends MimeMessage {
    private final String id;

    Named(Session session, String id) {
      super(session);
      this.id = id;
    }

    @Override
    protected void updateMessageID() throws MessagingException {
      setHeader("Message-ID", id);
    }
  }
}
