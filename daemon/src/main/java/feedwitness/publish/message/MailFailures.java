package feedwitness.publish.message;

import jakarta.mail.MessagingException;
import java.io.IOException;
import java.net.ConnectException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import org.eclipse.angus.mail.smtp.SMTPAddressFailedException;
import org.eclipse.angus.mail.smtp.SMTPSendFailedException;
import org.eclipse.angus.mail.smtp.SMTPSenderFailedException;
import org.eclipse.angus.mail.util.SocketConnectException;

/** What a failed attempt means for the next one. */
final class MailFailures {
  private static final int LONGEST = 160;

  private MailFailures() {}

  static Delivery of(Exception failure, String server) {
    Set<Throwable> all = all(failure);
    for (Throwable each : all) {
      Optional<String> certificate = Trust.trouble(each);
      if (certificate.isPresent()) {
        return new Delivery.Misconfigured(server + ": " + certificate.get());
      }
    }
    boolean permanent = false;
    for (Throwable each : all) {
      int code = code(each);
      if (code >= 400 && code < 500) {
        return new Delivery.Later("%s asks to wait: %s".formatted(server, said(each)));
      }
      permanent |= code >= 500;
    }
    if (permanent) {
      return new Delivery.Refused("%s refuses the message: %s".formatted(server, refusal(all)));
    }
    return new Delivery.Later("%s: %s".formatted(server, plain(all, failure)));
  }

  private static int code(Throwable failure) {
    if (failure instanceof SMTPAddressFailedException address) {
      return address.getReturnCode();
    }
    if (failure instanceof SMTPSenderFailedException sender) {
      return sender.getReturnCode();
    }
    // 250 and below: the failure is that of the addresses within.
    return failure instanceof SMTPSendFailedException send ? send.getReturnCode() : 0;
  }

  private static String refusal(Set<Throwable> all) {
    return all.stream()
        .filter(each -> code(each) >= 500)
        .map(MailFailures::said)
        .distinct()
        .reduce((a, b) -> Words.line(a + "; " + b, LONGEST))
        .orElse("");
  }

  private static String plain(Set<Throwable> all, Exception failure) {
    for (Throwable each : all) {
      if (each instanceof UnknownHostException) {
        return "no machine of that name is known; check the name and the network";
      }
      if (each instanceof ConnectException || each instanceof SocketConnectException) {
        return "nothing takes connections there (%s); check port and network".formatted(said(each));
      }
      if (each instanceof SocketTimeoutException) {
        return "it fell silent";
      }
    }
    // The library's own words only say where it was; the cause within says what happened.
    return all.stream()
        .filter(each -> each instanceof IOException && each.getMessage() != null)
        .findFirst()
        .map(MailFailures::said)
        .orElseGet(() -> said(failure));
  }

  private static String said(Throwable failure) {
    return Words.line(String.valueOf(failure.getMessage()), LONGEST);
  }

  /** Causes and the library's own chain of failures, one for each address. */
  private static Set<Throwable> all(Exception failure) {
    Set<Throwable> found = new LinkedHashSet<>();
    Deque<Throwable> open = new ArrayDeque<>();
    open.add(failure);
    while (!open.isEmpty()) {
      Throwable each = open.remove();
      if (found.add(each)) {
        if (each.getCause() != null) {
          open.add(each.getCause());
        }
        if (each instanceof MessagingException mail && mail.getNextException() != null) {
          open.add(mail.getNextException());
        }
      }
    }
    return found;
  }
}
