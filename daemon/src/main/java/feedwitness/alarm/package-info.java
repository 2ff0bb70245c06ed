/**
 * Alarms: a condition goes in, a transition of the IEC 62682 life cycle comes out. Pure: time is
 * given in as a {@link feedwitness.quantity.Stamp}, delays count on its clock that never jumps, the
 * end of shelving on its wall clock. Whoever finds something out (limits, missing data, a check
 * that is due, an injector that drifts) reports a {@link feedwitness.alarm.Condition} with its
 * {@link feedwitness.alarm.AlarmKind}; the state machine knows no kind by name. One thread at a
 * time. Not here: measurements, the record, showing and sending.
 */
@NullMarked
package feedwitness.alarm;

import org.jspecify.annotations.NullMarked;
