package feedwitness.alarm;

import java.util.List;

/** What became of a request about an alarm. */
public sealed interface AlarmOutcome {
  /** Done; nothing happened if it was so already. */
  record Done(Standing now, List<AlarmEvent> events) implements AlarmOutcome {
    public Done {
      events = List.copyOf(events);
    }
  }

  /**
   * Not possible now.
   *
   * @param field of the request at fault
   * @param message item, value, limit and remedy
   */
  record Refused(String field, String message) implements AlarmOutcome {}

  /** Never heard of. */
  record NoSuchAlarm(AlarmKey key) implements AlarmOutcome {}
}
