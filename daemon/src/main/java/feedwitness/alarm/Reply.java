package feedwitness.alarm;

import feedwitness.quantity.Stamp;

/**
 * Somebody's answer to an alarm.
 *
 * @param who answered
 * @param note what they said; may be empty
 * @param at when
 * @param before where the alarm was, so that the answer can be taken back
 */
public record Reply(String who, String note, Stamp at, State before) {}
