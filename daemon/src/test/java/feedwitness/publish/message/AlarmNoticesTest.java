package feedwitness.publish.message;

import static org.junit.jupiter.api.Assertions.assertEquals;

import feedwitness.alarm.AlarmEvent;
import feedwitness.alarm.AlarmKey;
import feedwitness.alarm.Priority;
import feedwitness.alarm.State;
import feedwitness.alarm.Transition;
import feedwitness.publish.message.Notice.Change;
import feedwitness.quantity.Stamp;
import feedwitness.site.Urgency;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class AlarmNoticesTest {
  private static AlarmEvent event(Transition transition, Priority priority) {
    return new AlarmEvent(
        "3-17-1",
        new AlarmKey("line", "conductivity-low"),
        "Conductivity low",
        priority,
        transition,
        State.NORMAL,
        0.98,
        1.2,
        "mS/cm",
        "line: 0.98 mS/cm is below the low limit 1.20 mS/cm",
        "plants starve",
        "check the injector",
        "",
        "",
        new Stamp(3, 17, 0, Bench.MONDAY.toEpochMilli(), true),
        false);
  }

  @Test
  void peopleAreToldWhatIsWrongAndWhatToDo() {
    assertEquals(
        new Notice(
            "3-17-1",
            "line/conductivity-low",
            "line",
            Urgency.HIGH,
            Change.RAISED,
            "line: 0.98 mS/cm is below the low limit 1.20 mS/cm",
            "check the injector",
            Bench.MONDAY),
        AlarmNotices.of(event(Transition.RAISED, Priority.HIGH)).orElseThrow());
  }

  @Test
  void everyTransitionOfAnAlarmHasItsMeaningForThoseElsewhere() {
    Map<Transition, Change> meanings =
        Map.of(
            Transition.RAISED, Change.RAISED,
            Transition.REOPENED, Change.REOPENED,
            Transition.CLEARED, Change.CLEARED,
            Transition.ACKNOWLEDGED, Change.ACKNOWLEDGED,
            Transition.SHELVED, Change.ACKNOWLEDGED,
            Transition.SUPPRESSED, Change.ACKNOWLEDGED,
            Transition.OUT_OF_SERVICE, Change.ACKNOWLEDGED);
    for (Transition each : Transition.values()) {
      assertEquals(
          Optional.ofNullable(meanings.get(each)),
          AlarmNotices.of(event(each, Priority.MEDIUM)).map(Notice::change),
          each.name());
    }
  }

  @Test
  void aNoticeIsToldOnceAndNeverAsksForAnAnswer() {
    assertEquals(
        Optional.of(Change.NOTED),
        AlarmNotices.of(event(Transition.RAISED, Priority.NOTICE)).map(Notice::change));
    assertEquals(Optional.empty(), AlarmNotices.of(event(Transition.CLEARED, Priority.NOTICE)));
  }
}
