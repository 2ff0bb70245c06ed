package feedwitness.alarm;

/** What happened to an alarm. */
public enum Transition {
  /** The condition came, came back, or was still there when the alarm began to count again. */
  RAISED,
  /** Somebody answered. */
  ACKNOWLEDGED,
  /** The answer was taken back. */
  REOPENED,
  /** The condition went. */
  CLEARED,
  /** Set aside by somebody until a time. */
  SHELVED,
  /** The time is over, or somebody ended it. */
  UNSHELVED,
  /** Stopped counting by design while it stood. */
  SUPPRESSED,
  /** Taken out of service by somebody. */
  OUT_OF_SERVICE,
  /** Put back into service by somebody. */
  IN_SERVICE
}
