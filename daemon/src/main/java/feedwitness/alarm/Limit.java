package feedwitness.alarm;

/**
 * A limit with its deadband: a value must come back by the deadband before the condition is over,
 * so that one that dithers on the limit makes one alarm.
 *
 * @param setpoint in the unit of the value; NaN for no limit
 * @param deadband ≥ 0, in the unit of the value
 * @param side which side of the setpoint is wrong
 */
public record Limit(double setpoint, double deadband, Side side) {
  /** The wrong side. */
  public enum Side {
    ABOVE,
    BELOW
  }

  public Limit {
    if (!(deadband >= 0)) {
      throw new IllegalArgumentException("deadband %s is negative".formatted(deadband));
    }
  }

  /** Whether the condition is there. Without a limit it never is, without a value it is unknown. */
  public Presence judge(double value, boolean before) {
    if (Double.isNaN(setpoint)) {
      return Presence.CLEAR;
    }
    if (Double.isNaN(value)) {
      return Presence.UNKNOWN;
    }
    double beyond = side == Side.ABOVE ? value - setpoint : setpoint - value;
    boolean there = beyond > 0 || (before && beyond > -deadband);
    return there ? Presence.ACTIVE : Presence.CLEAR;
  }
}
