package feedwitness.publish;

import feedwitness.alarm.AlarmEvent;
import org.jspecify.annotations.Nullable;

/**
 * One thing that happened to an alarm, on the stream.
 *
 * @param announces whether somebody must be told that an answer is wanted
 * @param alarm as it stands now
 */
record AlarmEventJson(
    String id,
    String transition,
    boolean announces,
    @Nullable String time,
    String who,
    String note,
    AlarmJson alarm) {
  static AlarmEventJson of(AlarmEvent event, AlarmJson alarm) {
    return new AlarmEventJson(
        event.id(),
        Codes.of(event.transition()),
        event.announces(),
        AlarmJson.time(event.at()),
        event.who(),
        event.note(),
        alarm);
  }
}
