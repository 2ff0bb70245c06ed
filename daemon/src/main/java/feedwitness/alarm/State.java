package feedwitness.alarm;

/**
 * Where an alarm is in the life cycle of IEC 62682. Shelving, suppression by design and taking out
 * of service are kept apart from it, in {@link Standing}. For a notice, which nobody need answer,
 * only {@link #NORMAL} and {@link #ACKNOWLEDGED} occur.
 */
public enum State {
  /** The condition is gone, nothing is left to answer. */
  NORMAL,
  /** The condition is there and nobody has answered. */
  UNACKNOWLEDGED,
  /** The condition is there and somebody has answered. */
  ACKNOWLEDGED,
  /** The condition is gone and nobody has answered. */
  RETURNED;

  /** Whether the condition is there. */
  public boolean active() {
    return this == UNACKNOWLEDGED || this == ACKNOWLEDGED;
  }

  /** Whether somebody has to answer. */
  public boolean waits() {
    return this == UNACKNOWLEDGED || this == RETURNED;
  }
}
