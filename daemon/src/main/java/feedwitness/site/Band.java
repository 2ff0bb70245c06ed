package feedwitness.site;

/**
 * Between which limits a quantity should stay. All three in the quantity's unit.
 *
 * @param low NaN for no lower limit
 * @param high NaN for no upper limit
 * @param deadband how far a value must come back before its alarm is over, ≥ 0
 */
public record Band(double low, double high, double deadband) {
  public static final Band NONE = new Band(Double.NaN, Double.NaN, 0);

  public Band {
    if (!(deadband >= 0)) {
      throw new IllegalArgumentException("deadband %s is below 0".formatted(deadband));
    }
    if (low + deadband >= high || high - deadband <= low) {
      throw new IllegalArgumentException(
          "limits %s and %s are not a deadband of %s apart; move them apart or make the deadband smaller"
              .formatted(low, high, deadband));
    }
  }

  /** Whether there is no limit on either side. */
  public boolean isEmpty() {
    return Double.isNaN(low) && Double.isNaN(high);
  }

  /** The same limits moved up. */
  public Band plus(double offset) {
    return new Band(low + offset, high + offset, deadband);
  }
}
