package feedwitness.alarm;

/** Whether the condition of an alarm is there now. */
public enum Presence {
  ACTIVE,
  CLEAR,
  /** Not enough evidence: nothing is raised, nothing is cleared, and delays stand still. */
  UNKNOWN
}
