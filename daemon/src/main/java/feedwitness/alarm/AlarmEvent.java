package feedwitness.alarm;

import feedwitness.quantity.Stamp;

/**
 * One thing that happened to an alarm; whoever records, shows or sends alarms gets these.
 *
 * @param id {@code boot-sequence-n}: the n-th since that sample; never given twice
 * @param key which alarm
 * @param title of its kind, for people
 * @param priority how soon somebody must answer; {@link Priority#NOTICE} for never
 * @param transition what happened
 * @param state where it left the alarm
 * @param value what was observed last, in {@code unit}; NaN if there is no number to it
 * @param limit what it is held against; NaN if there is none
 * @param unit symbol; empty if there is no number
 * @param words item, value, limit and unit in one sentence
 * @param consequence what happens if nobody answers
 * @param whatToDo the remedy
 * @param who did it; empty for the service itself
 * @param note said with it, such as the answer or why it was shelved; may be empty
 * @param at when; undated if the clock was not trusted
 * @param grouped raised within a flood: shown in the list, but not to be announced by itself
 */
public record AlarmEvent(
    String id,
    AlarmKey key,
    String title,
    Priority priority,
    Transition transition,
    State state,
    double value,
    double limit,
    String unit,
    String words,
    String consequence,
    String whatToDo,
    String who,
    String note,
    Stamp at,
    boolean grouped) {

  /** Whether somebody must be told that an answer is wanted. */
  public boolean announces() {
    return transition == Transition.RAISED && priority.needsAnswer() && !grouped;
  }
}
