package feedwitness.publish.message;

import feedwitness.alarm.AlarmEvent;
import feedwitness.alarm.Priority;
import feedwitness.publish.message.Notice.Change;
import feedwitness.site.Urgency;
import java.util.Optional;

/** What of the events of alarms people are told. */
public final class AlarmNotices {
  private AlarmNotices() {}

  /**
   * The notice of an event; empty if it changes nothing for those elsewhere. Alarms of a flood are
   * told too: what comes together is one message anyway.
   */
  public static Optional<Notice> of(AlarmEvent event) {
    return change(event)
        .map(
            change ->
                new Notice(
                    event.id(),
                    event.key().text(),
                    event.key().subject(),
                    urgency(event.priority()),
                    change,
                    event.words().isBlank() ? event.title() : event.words(),
                    event.whatToDo(),
                    event.at().wall()));
  }

  private static Optional<Change> change(AlarmEvent event) {
    boolean asks = event.priority().needsAnswer();
    return switch (event.transition()) {
      case RAISED -> Optional.of(asks ? Change.RAISED : Change.NOTED);
      case REOPENED -> asks ? Optional.of(Change.REOPENED) : Optional.empty();
      case CLEARED -> asks ? Optional.of(Change.CLEARED) : Optional.empty();
      case ACKNOWLEDGED, SHELVED, SUPPRESSED, OUT_OF_SERVICE -> Optional.of(Change.ACKNOWLEDGED);
      case UNSHELVED, IN_SERVICE -> Optional.empty();
    };
  }

  private static Urgency urgency(Priority priority) {
    return switch (priority) {
      case NOTICE -> Urgency.NOTE;
      case LOW -> Urgency.LOW;
      case MEDIUM -> Urgency.MEDIUM;
      case HIGH -> Urgency.HIGH;
    };
  }
}
