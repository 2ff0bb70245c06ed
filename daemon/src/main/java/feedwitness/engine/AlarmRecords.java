package feedwitness.engine;

import feedwitness.alarm.AlarmBook;
import feedwitness.alarm.AlarmEvent;
import feedwitness.alarm.AlarmKey;
import feedwitness.alarm.Standing;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceQuery;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.tinylog.Logger;

/** Alarms as records, and back again after a restart. */
public final class AlarmRecords {
  /** Kind of these records. */
  public static final String KIND = "alarm";

  static final String STATE = "alarms";
  private static final String STANDING = "standing";

  /**
   * So many may have happened since the state was last kept; a second's worth is kept each time.
   */
  private static final int LOOK_BACK = 1000;

  private AlarmRecords() {}

  static EvidenceDraft draft(AlarmEvent event, Standing standing) {
    Map<String, String> fields = new TreeMap<>();
    fields.put("event", event.id());
    fields.put("kind", event.key().kind());
    fields.put("title", event.title());
    fields.put("priority", event.priority().name());
    fields.put("transition", event.transition().name());
    fields.put("state", event.state().name());
    fields.put("value", number(event.value()));
    fields.put("limit", number(event.limit()));
    fields.put("unit", event.unit());
    fields.put("words", event.words());
    fields.put("consequence", event.consequence());
    fields.put("remedy", event.whatToDo());
    fields.put("note", event.note());
    fields.put("grouped", Boolean.toString(event.grouped()));
    fields.put(STANDING, standing.toText());
    return EvidenceDraft.of(KIND, event.key().subject(), fields).by(event.who());
  }

  private static String number(double number) {
    return Double.isNaN(number) ? "" : Double.toString(number);
  }

  /**
   * What was kept, and what the records say beyond it. A kept state that cannot be read is let go.
   */
  static AlarmBook restore(EvidenceHistory history) {
    AlarmBook book = new AlarmBook();
    try {
      book = history.state(STATE).map(AlarmBook::parse).orElse(book);
    } catch (IllegalArgumentException e) {
      Logger.warn("the alarms kept cannot be read ({}); going by the records", e.getMessage());
    }
    List<Evidence> newest = history.evidence(EvidenceQuery.newest(LOOK_BACK, KIND));
    Set<AlarmKey> seen = new HashSet<>();
    for (Evidence record : newest) {
      try {
        Standing standing = Standing.parse(record.field(STANDING));
        boolean later =
            book.find(standing.key())
                .map(kept -> kept.changed().compareTo(record.at()) <= 0)
                .orElse(true);
        if (seen.add(standing.key()) && later) {
          book.restore(standing);
        }
      } catch (IllegalArgumentException e) {
        Logger.warn("alarm record {} is of another program: {}", record.key(), e.getMessage());
      }
    }
    return book;
  }
}
