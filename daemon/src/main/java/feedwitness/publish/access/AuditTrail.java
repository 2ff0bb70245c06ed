package feedwitness.publish.access;

import feedwitness.ledger.EvidenceDraft;
import java.net.InetAddress;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.tinylog.Logger;

/**
 * Puts on record who changed what: kind {@code audit}, the author is the caller's name. What was
 * sent is not repeated: it may hold secrets, and what came of it has records of its own.
 */
public final class AuditTrail {
  static final String KIND = "audit";
  private static final int LONGEST_SUBJECT = 64;

  private final RecordBook book;

  /** Writes into a book. */
  public AuditTrail(RecordBook book) {
    this.book = book;
  }

  /**
   * A request that could change something was answered.
   *
   * @param what method and path as the interface names it, without what a stranger can choose
   *     freely
   * @param subject the point or device it was about; may be empty
   * @param status HTTP status of the answer
   */
  public void note(Caller who, String what, String subject, int status, InetAddress from) {
    Map<String, String> fields = new TreeMap<>();
    fields.put("request", what);
    fields.put("status", Integer.toString(status));
    fields.put("by", who.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    fields.put("from", from.getHostAddress());
    if (!who.device().isEmpty()) {
      fields.put("device", who.device());
    }
    String about = subject.substring(0, Math.min(subject.length(), LONGEST_SUBJECT));
    EvidenceDraft draft =
        new EvidenceDraft(KIND, about, who.name(), new TreeMap<>(fields), Optional.empty());
    // The answer does not wait for the disk; a record that fails is told to the log.
    var unused =
        book.put(draft)
            .whenComplete(
                (kept, failure) -> {
                  if (failure != null) {
                    Logger.warn("not recorded: {} did {}: {}", who.name(), what, failure);
                  }
                });
  }
}
